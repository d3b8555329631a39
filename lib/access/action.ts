import type { z } from 'zod'
import type { Actor } from './actor'
import { requireActor } from './session'

/** What a form shows after it was sent: a message, errors at their fields, and what had been typed. */
export interface FormState {
  readonly message?: string
  readonly done?: boolean
  readonly fields?: Readonly<Record<string, string>>
  readonly values?: Readonly<Record<string, string>>
  /** What was made and is shown this once, such as an invitation link. */
  readonly made?: string
}

const typed = (form: FormData): Record<string, string> =>
  Object.fromEntries([...form].flatMap(([name, value]) => (typeof value === 'string' ? [[name, value]] : [])))

/** A refusal that keeps what was typed. */
export const refuse = (form: FormData, message: string, fields?: Record<string, string>): FormState => ({
  message,
  values: typed(form),
  ...(fields ? { fields } : {}),
})

/** What is ticked of several: each box has a name of its own, `PREFIX:KEY`, for of equal names a refusal keeps one only. */
export const tickedIn = (form: FormData, prefix: string): string[] =>
  [...new Set(form.keys())].flatMap((name) => (name.startsWith(`${prefix}:`) ? [name.slice(prefix.length + 1)] : []))

/**
 * Parses a form by a schema whose keys are its field names; an error goes to its field and nothing typed is lost.
 * Repeated fields become lists when the schema expects one.
 */
export function parseForm<Schema extends z.ZodType>(
  schema: Schema,
  form: FormData,
): { ok: true; input: z.infer<Schema> } | { ok: false; state: FormState } {
  const names = [...new Set(form.keys())].filter((name) => !name.startsWith('$'))
  const raw = Object.fromEntries(
    names.map((name) => {
      const all = form.getAll(name)
      return [name, all.length > 1 ? all : all[0]]
    }),
  )
  const result = schema.safeParse(raw)
  if (result.success) return { ok: true, input: result.data }
  const fields: Record<string, string> = {}
  for (const { path, message } of result.error.issues) fields[String(path[0] ?? 'form')] ??= message
  return { ok: false, state: refuse(form, 'Nothing was saved yet. Please mend what is marked below.', fields) }
}

/** A gated form action: actor, parse, then the work. The work decides what this actor may do. */
export const gatedForm =
  <Schema extends z.ZodType>(
    schema: Schema,
    work: (input: z.infer<Schema>, actor: Actor, form: FormData) => Promise<FormState>,
  ) =>
  async (_previous: FormState, form: FormData): Promise<FormState> => {
    const actor = await requireActor()
    const parsed = parseForm(schema, form)
    return parsed.ok ? work(parsed.input, actor, form) : parsed.state
  }
