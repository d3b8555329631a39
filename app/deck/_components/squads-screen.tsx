import { writeRoute } from '../state/address'
import { dayOf, findPlan } from '../state/plan'
import { CalledList } from './called-list'
import { useDeck } from './deck-context'
import { DeviceNotices, Freshness, HandChoice } from './device-notices'
import { DiverLine } from './diver-line'
import { PlanLink } from './plan-link'
import { SendingNotice } from './sending-notice'
import { Top } from './top'

/** Where the deck opens: a squad, and its divers. */
export function SquadsScreen() {
  const { roster, state, dispatch, reload, loading } = useDeck()
  const { squads, clubs, divers } = roster.snapshot
  const chosen = squads.find(({ id }) => id === state.squad) ?? squads[0]
  const members = chosen ? chosen.divers.flatMap((id) => roster.divers.get(id) ?? []) : divers
  const plan = chosen ? findPlan(state.plans, chosen.id, dayOf(Date.now())) : null
  const isHere = ({ id }: { readonly id: string }) => plan?.here.includes(id) ?? true
  const [here, away] = [members.filter(isHere), members.filter((diver) => !isHere(diver))]
  const clubName = (id: string) => (clubs.length > 1 ? clubs.find((club) => club.id === id)?.name : undefined)
  return (
    <>
      <Top back={null}>
        <h1 className="text-18">Deck</h1>
        <p className="deck-sub">{roster.snapshot.coach.name}</p>
      </Top>
      <main id="main" className="deck-page">
        <SendingNotice />
        <DeviceNotices />
        {squads.length > 1 ? (
          <nav aria-label="Squads" className="deck-squads">
            {squads.map(({ id, name, club }) => (
              <button
                key={id}
                type="button"
                className="deck-squad"
                aria-pressed={id === chosen?.id}
                onClick={() => dispatch({ type: 'squad', squad: id })}
              >
                {name}
                {clubName(club) ? <small>{clubName(club)}</small> : null}
              </button>
            ))}
          </nav>
        ) : null}
        <CalledList />
        <h2 className="deck-head">{chosen?.name ?? 'Divers'}</h2>
        {chosen ? <PlanLink squad={chosen.id} /> : null}
        {members.length > 0 ? (
          <ul className="deck-list">
            {here.map((diver) => (
              <DiverLine key={diver.id} diver={diver} watch={plan?.watch[diver.id]} />
            ))}
          </ul>
        ) : (
          <p className="py-3 text-soft">Nobody is in this squad yet. Its head coach adds divers at the desk.</p>
        )}
        {away.length > 0 ? (
          <p className="deck-sub">Not here today: {away.map(({ shortName }) => shortName).join(', ')}.</p>
        ) : null}
        <p className="deck-pair">
          <a className="button" href={writeRoute({ at: 'seen' })}>
            What you saw lately
          </a>
          <button type="button" className="button" disabled={loading} onClick={reload}>
            {loading ? 'Loading…' : 'Load again'}
          </button>
        </p>
        <Freshness />
        <HandChoice />
        <p className="deck-pair text-13">
          <a className="deck-exit" href="/desk/divers">
            To the desk
          </a>
        </p>
      </main>
    </>
  )
}
