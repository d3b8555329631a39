/** How much a test does: the short form with `npm test`, the full one with `npm run test:long`. */
export const effort = (short: number, full: number): number => (process.env.PLUMBLINE_LONG ? full : short)
