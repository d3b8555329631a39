'use client'

import { type ComponentProps, use } from 'react'
import { ActionContext } from './action-form'
import { CheckField } from './check-field'
import { Field, SelectField, TextAreaField } from './field'

/** What the last answer says of one field: its error, and what had been typed there. */
function useField(name: string, fallback: string | undefined) {
  const { state, prefix } = use(ActionContext)
  return { id: prefix + name, error: state.fields?.[name], defaultValue: state.values?.[name] ?? fallback }
}

type Plain<Props> = Omit<Props, 'error' | 'id' | 'defaultValue'> & { readonly defaultValue?: string }

export function FormField({ defaultValue, ...rest }: Plain<ComponentProps<typeof Field>>) {
  return <Field {...rest} {...useField(rest.name, defaultValue)} />
}

export function FormTextArea({ defaultValue, ...rest }: Plain<ComponentProps<typeof TextAreaField>>) {
  return <TextAreaField {...rest} {...useField(rest.name, defaultValue)} />
}

export function FormSelect({ defaultValue, ...rest }: Plain<ComponentProps<typeof SelectField>>) {
  const field = useField(rest.name, defaultValue)
  // React puts a select back to its first option after an action, whatever its default has become.
  return <SelectField key={field.defaultValue} {...rest} {...field} />
}

type TickProps = Omit<ComponentProps<typeof CheckField>, 'name'> & { readonly name: string }

/** A tick box with a name of its own, so that each tick is kept when the form comes back. */
export function FormTick({ defaultChecked = false, name, ...rest }: TickProps) {
  const { values } = use(ActionContext).state
  const checked = values ? values[name] !== undefined : defaultChecked
  return <CheckField key={String(checked)} name={name} defaultChecked={checked} {...rest} />
}
