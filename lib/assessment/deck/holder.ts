/**
 * Cookie that names the account signed in on this browser, readable by the deck: without a network it is how the deck knows
 * whose records it may show. It proves nothing to the server.
 */
export const holderCookie = 'plumbline.holder'
/** Days without contact after which the deck on a device is nobody's. */
export const holderDays = 30
