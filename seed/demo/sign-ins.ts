import { type AccountData, clubs, coaches, officers } from './coast'

/** What the launcher prints of a demo sign-in. */
export interface DemoSignIn {
  readonly role: string
  readonly email: string
  readonly note: string
}

const roleNames = {
  assistant: 'assistant coach',
  head: 'head coach',
  reviewer: 'programme reviewer',
  lead: 'programme lead',
} as const

function asSignIn({ posts, email, sees }: AccountData): DemoSignIn {
  const [post] = posts
  const role = post ? roleNames[post.role] : ''
  const where = posts.flatMap(({ club }) => clubs.find(({ key }) => key === club)?.name ?? [])
  return { role, email, note: [where.join(' and '), sees].filter((words) => words !== '').join(': ') }
}

/** Those who still have a post: assistant and head coach of each club, the coach in both, reviewer and lead. */
export const demoSignIns: readonly DemoSignIn[] = [...coaches.filter((coach) => !coach.left), ...officers].map(asSignIn)
