import type { Difference } from './difference'
import type { Measured } from './measured'

/** How a quantity is written: its unit, decimals, and what more of it is called, such as "longer". */
export interface Written {
  readonly unit: string
  readonly decimals: number
  readonly more: string
  readonly less: string
}

/** A time in seconds to the thousandth. */
export const inSeconds: Written = { unit: 's', decimals: 3, more: 'longer', less: 'shorter' }

const minus = (text: string): string => text.replace('-', '−')

/** A result with half its 95 % interval: "1.217 ± 0.013 s". Cut intervals are written from and to. */
export function sayMeasured({ value, low, high }: Measured, { unit, decimals }: Written): string {
  const said = (number: number) => minus(number.toFixed(decimals))
  const [below, above] = [value - low, high - value]
  const even = Math.abs(above - below) < 10 ** -decimals
  return even
    ? `${said(value)} ± ${said((above + below) / 2)} ${unit}`
    : `${said(value)} ${unit} (${said(low)} to ${said(high)})`
}

/** What can be said of a difference: how much more or less the second is, or that the films do not tell. */
export function sayDifference({ by, told }: Difference, written: Written): string {
  if (!told) return 'no difference that this film can show'
  const { unit, decimals, more, less } = written
  const half = ((by.high - by.low) / 2).toFixed(decimals)
  return `${Math.abs(by.value).toFixed(decimals)} ± ${half} ${unit} ${by.value > 0 ? more : less}`
}
