/** One thing that is wrong in a form: the field it is about, or null when it is about the whole. */
export interface FormError {
  readonly field: string | null
  readonly message: string
}

/** Says what happened and what was kept, then lists each error as a link to its field. Nothing when there is none. */
export function ErrorSummary({ title, errors }: { title: string; errors: readonly FormError[] }) {
  if (errors.length === 0) return null
  return (
    <div role="alert" className="measure border-l-4 border-coral bg-coral-wash px-4 py-3 text-ink">
      <p className="font-bold">{title}</p>
      <ul className="mt-1 whitespace-pre-line">
        {errors.map(({ field, message }) => (
          <li key={`${field} ${message}`}>
            {field ? (
              <a className="text-ink" href={`#${field}`}>
                {message}
              </a>
            ) : (
              message
            )}
          </li>
        ))}
      </ul>
    </div>
  )
}
