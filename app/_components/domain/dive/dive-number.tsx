/** A dive number, never broken from its letter. */
export function DiveNumber({ children }: { children: string }) {
  return <span className="dive-number">{children}</span>
}
