import type { Metadata } from 'next'
import { PageFrame } from '@/app/_components/frame/page-frame'
import { Nothing, Notice } from '@/app/_components/ui/notice'
import { Beside, PageHead, Section } from '@/app/_components/ui/sheet'
import { signOutAction } from '@/app/account/actions'
import { loadFrame } from '@/app/loader'
import { CountTable } from './_components/count-table'
import { FilterForm } from './_components/filter-form'
import { StandingStrip } from './_components/standing-strip'
import { WaitTable } from './_components/wait-table'
import { loadRegion, type RegionPage } from './loader'

export const metadata: Metadata = { title: 'Region' }

interface RegionPageProps {
  readonly searchParams: Promise<Record<string, string | string[] | undefined>>
}

/** So few that a figure is a name. */
const few = 5

function headline({ ready, shown, total }: RegionPage): string {
  if (shown === 0) return total === 0 ? 'No diver is entered yet.' : 'No diver is looked at with these choices.'
  return `${ready} of ${shown} ${shown === 1 ? 'diver' : 'divers'} ${ready === 1 ? 'is' : 'are'} ready for a step that waits for a head coach.`
}

function Waits({ of, lines }: { of: string; lines: RegionPage['levelWaits'] }) {
  return (
    <Section title={`What ${of} for most`} aside="first what holds up most divers; a diver may wait for several things">
      <Beside>
        {lines.length > 0 ? (
          <WaitTable caption={`What ${of} for`} lines={lines} />
        ) : (
          <Nothing>Nobody waits for anything here.</Nothing>
        )}
      </Beside>
    </Section>
  )
}

function Apart({ leavers }: Pick<RegionPage, 'leavers'>) {
  return (
    <Section title="Left in the last twelve months" aside="counted apart; their records wait for the next club">
      <Beside>
        {leavers.length === 0 ? (
          <Nothing>Nobody left a club without joining another.</Nothing>
        ) : (
          <p className="measure">{leavers.map(({ club, count }) => `${club}: ${count}`).join(' · ')}</p>
        )}
      </Beside>
    </Section>
  )
}

export default async function RegionPageView({ searchParams }: RegionPageProps) {
  const frame = await loadFrame()
  const region = await loadRegion(await searchParams)
  return (
    <PageFrame frame={frame} current="/region" signOut={signOutAction}>
      <PageHead sentence={headline(region)} margin={region.programme}>
        Every number opens its list. Numbers this small say who, not how clubs compare.
      </PageHead>
      <Beside>
        <FilterForm query={region.query} choices={region.choices} />
        {region.shown > 0 && region.shown < few ? (
          <Notice>
            Only {region.shown} of {region.total} divers are looked at: read these as names, not as shares.
          </Notice>
        ) : null}
      </Beside>
      <Section title="The next level" aside="each diver stands in one column; to review beside it">
        <Beside>
          <StandingStrip table={region.levels} />
          <CountTable caption="How divers stand to their next level" table={region.levels} />
        </Beside>
      </Section>
      <Waits of="the next level waits" lines={region.levelWaits} />
      <Section title="Board moves" aside="each diver stands in one column of each move">
        <Beside>
          {region.moves.rows.length > 0 ? (
            <CountTable caption="How divers stand to board moves" table={region.moves} />
          ) : (
            <Nothing>No board move leads there with these choices.</Nothing>
          )}
        </Beside>
      </Section>
      {region.moves.rows.length > 0 ? <Waits of="board moves wait" lines={region.moveWaits} /> : null}
      <Apart leavers={region.leavers} />
      <Section title="Take along" aside="comma-separated values, dates as ISO 8601">
        <Beside>
          <p className="measure">
            Always the whole region, whatever is chosen above: two choices laid side by side could tell what each
            withholds. Figures about fewer than five divers of other clubs are withheld, and what would give them away.
          </p>
          <ul className="no-print flex flex-wrap gap-x-5 gap-y-1 pt-2">
            {region.exports.map(({ href, label }) => (
              <li key={href}>
                <a href={href} download>
                  {label}
                </a>
              </li>
            ))}
          </ul>
        </Beside>
      </Section>
    </PageFrame>
  )
}
