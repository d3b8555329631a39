import type { InputHTMLAttributes, ReactNode, SelectHTMLAttributes, TextareaHTMLAttributes } from 'react'

interface FieldText {
  readonly label: string
  /** Also the id that the error summary links to. */
  readonly name: string
  readonly hint?: string
  /** What is wrong and what to do. */
  readonly error?: string
  /** Where one name stands on a page twice. */
  readonly id?: string
}

interface Wiring {
  readonly id: string
  readonly name: string
  readonly className: string
  readonly 'aria-invalid'?: true
  readonly 'aria-describedby'?: string
}

function wire({ name, hint, error, id = name }: FieldText): Wiring {
  const described = [error && `${id}-error`, hint && `${id}-hint`].filter(Boolean).join(' ')
  return {
    id,
    name,
    className: 'control',
    ...(error ? { 'aria-invalid': true } : {}),
    ...(described ? { 'aria-describedby': described } : {}),
  }
}

function Frame({ field, children }: { field: FieldText; children: ReactNode }) {
  const id = field.id ?? field.name
  return (
    <div>
      <label htmlFor={id} className="mb-1 block font-bold">
        {field.label}
      </label>
      {field.hint ? (
        <p id={`${id}-hint`} className="mb-1 text-13 text-soft">
          {field.hint}
        </p>
      ) : null}
      {field.error ? (
        <p id={`${id}-error`} className="mb-1 text-13 font-bold whitespace-pre-line text-coral">
          {field.error}
        </p>
      ) : null}
      {children}
    </div>
  )
}

const split = <P extends FieldText>(props: P) => {
  const { label, name, hint, error, id, ...rest } = props
  return { field: { label, name, hint, error, id }, rest }
}

export function Field(props: FieldText & InputHTMLAttributes<HTMLInputElement>) {
  const { field, rest } = split(props)
  return (
    <Frame field={field}>
      <input {...rest} {...wire(field)} />
    </Frame>
  )
}

export function TextAreaField(props: FieldText & TextareaHTMLAttributes<HTMLTextAreaElement>) {
  const { field, rest } = split(props)
  return (
    <Frame field={field}>
      <textarea rows={3} {...rest} {...wire(field)} />
    </Frame>
  )
}

export function SelectField(props: FieldText & SelectHTMLAttributes<HTMLSelectElement>) {
  const { field, rest } = split(props)
  return (
    <Frame field={field}>
      <select {...rest} {...wire(field)} />
    </Frame>
  )
}
