import { useEffect } from 'react'
import { CorrectScreen } from './correct-screen'
import { DiverScreen } from './diver-screen'
import { MendScreen } from './mend-screen'
import { PlanScreen } from './plan-screen'
import { RateScreen } from './rate-screen'
import { SeenScreen } from './seen-screen'
import { SquadsScreen } from './squads-screen'
import { UnsentScreen } from './unsent-screen'
import { useHand } from './use-hand'
import { useRoute } from './use-route'

/** The screen of the present route. A screen and its "more" are one, so that what is typed on either stays. */
export function Screen() {
  const route = useRoute()
  useHand()
  const place = 'diver' in route ? `${route.at} ${route.diver}` : route.at
  // biome-ignore lint/correctness/useExhaustiveDependencies: another place begins at its top
  useEffect(() => {
    window.scrollTo(0, 0)
  }, [place])
  switch (route.at) {
    case 'squads':
      return <SquadsScreen />
    case 'diver':
      return <DiverScreen key={route.diver} diver={route.diver} />
    case 'rate':
    case 'more':
      return (
        <RateScreen
          key={`${route.diver}/${route.pair}`}
          diver={route.diver}
          pair={route.pair}
          more={route.at === 'more'}
        />
      )
    case 'plan':
      return <PlanScreen key={route.squad} squad={route.squad} />
    case 'seen':
      return <SeenScreen />
    case 'correct':
    case 'correct more':
      return <CorrectScreen key={route.observation} id={route.observation} more={route.at === 'correct more'} />
    case 'unsent':
      return <UnsentScreen />
    case 'mend':
    case 'mend more':
      return <MendScreen key={route.item} id={route.item} more={route.at === 'mend more'} />
  }
}
