/** What stands beside every step that can hurt someone. The words are the programme's and are never left out. */
const words = {
  move: 'A first dive from a higher board can hurt. This page supports, and never replaces, the judgement of a qualified coach on the deck. Follow the facility’s rules, the governing body’s rules and local law, the emergency action plan and medical advice. A diver who is stood down takes no board move and no new dive.',
  guide:
    'Do not attempt a dive from a page. A guide supports, and never replaces, the judgement of a qualified coach standing on the deck. Follow the facility’s rules, the governing body’s rules and local law, the emergency action plan and medical advice. After a knock to the head: out of the water, the emergency plan, medical advice.',
  dive: 'A new dive can hurt. Do not attempt a dive from a page: a qualified coach on the deck decides, under the facility’s and the governing body’s rules. After a knock to the head: out of the water, the emergency plan, medical advice.',
} as const

export function Caution({ about }: { about: keyof typeof words }) {
  return (
    <p role="note" className="measure border-l-4 border-coral px-4 py-1 text-13">
      {words[about]}
    </p>
  )
}
