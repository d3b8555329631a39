interface RestChoiceProps {
  readonly rest: boolean
  readonly onChange: (rest: boolean) => void
}

/** Whether what was not rated was as expected, said of an attempt that is opened again. */
export function RestChoice({ rest, onChange }: RestChoiceProps) {
  return (
    <label className="deck-check">
      <input type="checkbox" checked={rest} onChange={(event) => onChange(event.target.checked)} />
      Rest as expected
    </label>
  )
}
