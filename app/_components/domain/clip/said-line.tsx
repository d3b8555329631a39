import type { Said } from './use-sending'

/** What happened, in a line that is read out. It keeps its room, so that nothing below jumps. */
export function SaidLine({ said, pending }: { said: Said | null; pending: boolean }) {
  const text = pending ? 'Sending …' : (said?.text ?? '')
  const isRefusal = !pending && said?.tone === 'refused'
  return (
    <p role="status" className={isRefusal ? 'said-line font-bold text-coral' : 'said-line text-soft'}>
      {text}
    </p>
  )
}
