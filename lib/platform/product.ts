/** Our name. It stands here once, so that it can be changed. */
export const productName = 'Plumbline'

/** What it is, in one sentence. */
export const tagline = 'Who is ready for which dive, why, and who signed for it.'
