import type { InputHTMLAttributes, ReactNode } from 'react'

type CheckProps = InputHTMLAttributes<HTMLInputElement> & { label: ReactNode; type?: 'checkbox' | 'radio' }

/** One tick box or one of several choices, its words beside it. */
export function CheckField({ label, type = 'checkbox', ...rest }: CheckProps) {
  return (
    <label className="flex min-h-8 items-baseline gap-2.5">
      <input type={type} className="size-4 shrink-0 translate-y-0.5 accent-teal" {...rest} />
      <span>{label}</span>
    </label>
  )
}

/** Choices that belong together, under one question. */
export function CheckGroup({
  legend,
  error,
  children,
}: {
  legend: string
  error?: string | undefined
  children: ReactNode
}) {
  return (
    <fieldset>
      <legend className="mb-1 font-bold">{legend}</legend>
      {error ? <p className="mb-1 font-bold text-coral">{error}</p> : null}
      {children}
    </fieldset>
  )
}
