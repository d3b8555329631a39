/** What a coach is in a club. */
export type ClubRole = 'assistant' | 'head'
/** What somebody is in the programme, across its clubs. */
export type ProgrammeRole = 'reviewer' | 'lead'

/** A coach's post in one club, today. */
export interface ClubPost {
  readonly club: string
  readonly clubName: string
  /** IANA zone in which the club's days are counted. */
  readonly zone: string
  readonly role: ClubRole
}

/** Who is asking: an account with a live session and the roles it has today. */
export interface Actor {
  readonly account: string
  readonly session: string
  readonly name: string
  readonly initials: string
  readonly programme: {
    readonly id: string
    readonly name: string
    readonly zone: string
    readonly isDemo: boolean
    /** Programme time minus system time in milliseconds; 0 outside the demo. */
    readonly clockOffset: number
  }
  readonly clubs: readonly ClubPost[]
  readonly programmeRoles: readonly ProgrammeRole[]
}
