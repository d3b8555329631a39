import { ExemplarList } from '@/app/_components/domain/clip/exemplar-list'
import { LogRow } from '@/app/_components/ui/sheet'
import type { FaultView, GuideView } from '../[pair]/loader'

function Fault({ fault }: { fault: FaultView }) {
  return (
    <li id={fault.key} className="guide-item guide-fault">
      <h3 className="font-bold">{fault.seen}</h3>
      <p className="text-soft">{fault.causes.join(' ')}</p>
      <ul>
        {fault.corrections.map(({ kind, text, drill }) => (
          <li key={text}>
            <span className="text-soft">{kind}: </span>
            {text}{' '}
            {drill?.href ? (
              <a href={drill.href} className="guide-drill">
                {drill.name}
              </a>
            ) : null}
          </li>
        ))}
      </ul>
      <ExemplarList exemplars={fault.exemplars} />
    </li>
  )
}

/** Phase by phase what goes wrong, why, and what mends it; a drill leads to its own guide. */
export function FaultList({ phases }: { phases: GuideView['phases'] }) {
  return (
    <div className="guide-faults">
      {phases
        .filter(({ faults }) => faults.length > 0)
        .map(({ phase, faults }) => (
          <LogRow key={phase} margin={<span className="guide-phase">{phase}</span>}>
            <ul className="guide-fault-columns">
              {faults.map((fault) => (
                <Fault key={fault.key} fault={fault} />
              ))}
            </ul>
          </LogRow>
        ))}
    </div>
  )
}
