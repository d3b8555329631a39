/** Version of what the deck and the server say to each other; a change of meaning takes a new number. */
export const deckVersion = 1
/** Most items in one batch, and most bytes of its body. Apart from the schemas, so that a phone need not load zod. */
export const batchLimit = { items: 50, bytes: 256 * 1024 } as const
/** Highest number of a clip on a camera. */
export const longestClipNumber = 9999
