/** An answer that is not the data asked for: what happened, what was kept, what to do. */
export const answerWith = (status: number, message: string): Response => Response.json({ message }, { status })
