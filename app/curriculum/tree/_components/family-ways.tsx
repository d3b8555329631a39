interface FamilyWay {
  readonly family: string
  readonly label: string
  readonly href: string
}

/** The ways from one family's tree to another's. */
export function FamilyWays({ families, current }: { families: readonly FamilyWay[]; current?: string }) {
  return (
    <nav aria-label="Families">
      <ul className="flex flex-wrap gap-x-5 gap-y-2">
        {families.map(({ family, label, href }) => (
          <li key={family}>
            <a href={href} aria-current={family === current ? 'page' : undefined} className="family-way">
              {label}
            </a>
          </li>
        ))}
      </ul>
    </nav>
  )
}
