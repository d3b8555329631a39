import type { Ask, PanelAction } from '../../_components/domain/action-panel/action-panel'

/** What can be done about a line, by the ids that it sends; the words of each stand here and nowhere else. */
export type Act =
  | {
      readonly act: 'approve' | 'override'
      readonly on: Decision
      readonly isMove: boolean
      readonly alone: boolean
      readonly questions: readonly StandingQuestion[]
    }
  | {
      readonly act: 'return'
      readonly on: Decision
      readonly pairs: readonly { readonly key: string; readonly name: string }[]
    }
  | { readonly act: 'withdraw'; readonly on: Decision }
  | {
      readonly act: 'sign'
      readonly diver: string
      readonly pair: string
      readonly level: string
      readonly levelTitle: string
    }
  | { readonly act: 'revoke'; readonly kind: 'sign-off' | 'recognition'; readonly subject: string }
  | { readonly act: 'release'; readonly attempt: string }
  | { readonly act: 'accept'; readonly observation: string }
  | { readonly act: 'close'; readonly call: string }

/** A level or board move of a diver, with the digest of what was shown of it. */
export interface Decision {
  readonly diver: string
  readonly target: string
  readonly basis: string
}

/** A question about a moment of the evidence, of which the decision has to say what became. */
export interface StandingQuestion {
  readonly id: string
  readonly about: string
  /** What is asked; null where the words were erased. */
  readonly text: string | null
  readonly answered: boolean
}

const reason = (label: string, hint?: string): Ask => ({
  kind: 'words',
  name: 'reason',
  label,
  required: true,
  ...(hint ? { hint } : {}),
})

const wishes: Ask = {
  kind: 'one',
  name: 'diverWants',
  legend: 'What does the diver want?',
  choices: [
    { value: 'yes', label: 'Yes: the diver wants to move up' },
    { value: 'not yet', label: 'Not yet: approved, and the diver chooses when' },
  ],
}
const onlyCoach: Ask = {
  kind: 'words',
  name: 'onlyCoach',
  label: 'Why was no other coach there?',
  hint: 'You are the only coach in the evidence; the record says why.',
}

/** What became of a question: asked of every one that stands, and each answer lets the decision be taken. */
const saying = ({ id, about, text, answered }: StandingQuestion): Ask[] => [
  {
    kind: 'one',
    name: `how:${id}`,
    legend: text === null ? `The question about ${about}` : `“${text}” (${about})`,
    choices: [
      ...(answered ? [{ value: 'answered', label: 'The coach answered it' }] : []),
      { value: 'settled', label: 'I looked again, and it is settled' },
      { value: 'left open', label: 'It is left open, and I say why' },
    ],
  },
  { kind: 'words', name: `why:${id}`, label: 'Why it is left open', hint: 'Only where it is. The record keeps it.' },
]

const deciding = ({ isMove, alone, questions }: Extract<Act, { act: 'approve' | 'override' }>): Ask[] => [
  ...(isMove ? [wishes] : []),
  ...(alone ? [onlyCoach] : []),
  ...questions.flatMap(saying),
]
const undecided = 'Nothing was decided'

type Makes = {
  readonly [A in Act['act']]: (
    act: Extract<Act, { act: A }> | (Act & { act: A }),
  ) => Omit<PanelAction, 'sends'> & { sends: object }
}

const makes: Makes = {
  approve: (act) => ({
    shortcut: 'a',
    label: 'Approve…',
    send: 'Approve',
    refused: undecided,
    tone: 'go',
    caution: act.isMove ? 'move' : 'dive',
    sends: act.on,
    asks: deciding(act),
  }),
  override: (act) => ({
    shortcut: 'v',
    label: 'Approve by override…',
    send: 'Approve by override',
    refused: undecided,
    tone: 'go',
    caution: act.isMove ? 'move' : 'dive',
    sends: act.on,
    asks: [...deciding(act), reason('Reason', 'Only age can be waived. What rests on this will say “by override”.')],
  }),
  return: ({ on, pairs }) => ({
    shortcut: 'r',
    label: 'Return…',
    send: 'Return with this reason',
    refused: undecided,
    tone: 'plain',
    sends: on,
    asks: [
      {
        kind: 'several',
        name: 'wantsMoreOf',
        legend: 'Wants more of',
        choices: pairs.map(({ key, name }) => ({ value: key, label: name })),
      },
      reason('Reason', 'What you want to see. It comes back with a new clean attempt at one of the skills ticked.'),
    ],
  }),
  withdraw: ({ on }) => ({
    shortcut: 'w',
    label: 'Withdraw…',
    send: 'Withdraw with this reason',
    refused: undecided,
    tone: 'plain',
    sends: on,
    asks: [reason('Reason', 'It earns no credit from now on; the record keeps both decisions.')],
  }),
  sign: ({ diver, pair, level, levelTitle }) => ({
    shortcut: 's',
    label: 'Renew…',
    send: 'Sign',
    refused: 'Not signed',
    tone: 'go',
    note: `Your signature at ${levelTitle}, on what was shown since.`,
    sends: { diver, pair, level },
    asks: [],
  }),
  revoke: ({ kind, subject }) => ({
    shortcut: 'x',
    label: 'Take back…',
    send: kind === 'sign-off' ? 'Revoke the sign-off' : 'Revoke the recognition',
    refused: 'Not taken back',
    tone: 'stop',
    sends: { kind, subject },
    asks: [reason('Why is it taken back?')],
  }),
  release: ({ attempt }) => ({
    shortcut: 'l',
    label: 'Release…',
    send: 'Release the attempt',
    refused: 'Not released',
    tone: 'plain',
    sends: { attempt },
    asks: [
      reason(
        'Why may it count?',
        'The skill was closed to the diver then. From now on the attempt counts like any other.',
      ),
    ],
  }),
  accept: ({ observation }) => ({
    shortcut: 'a',
    label: 'Accept…',
    send: 'Accept the higher rating',
    refused: 'Not accepted',
    tone: 'plain',
    sends: { observation },
    asks: [
      reason(
        'What makes the higher rating right?',
        'Look at the video first. The lower rating stops counting against the diver.',
      ),
    ],
  }),
  close: ({ call }) => ({
    shortcut: 'c',
    label: 'Close…',
    send: 'Close the call',
    refused: 'Not closed',
    tone: 'plain',
    sends: { call },
    asks: [reason('Why were the others not rated?', 'What was dived and rated stays.')],
  }),
}

/** The panel of an act; `back` is the page of the desk to come back to. */
export function panelOf(act: Act, back: string): PanelAction {
  // An act and its entry always match; TypeScript cannot see that correlation through an index.
  const make = makes[act.act] as (act: Act) => Omit<PanelAction, 'sends'> & { sends: object }
  const made = make(act)
  return { ...made, sends: { ...made.sends, act: act.act, back } }
}
