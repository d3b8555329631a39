import { PageHead } from '@/app/_components/ui/sheet'
import type { DiverPage } from '../loader'

/** What is to say of a diver in one sentence, where she dives, and the ways on that the reader has. */
export function DiverHead({ page }: { page: DiverPage }) {
  return (
    <PageHead sentence={page.headline} margin={page.level}>
      {page.name} · {page.where}
      {page.headed ? (
        <>
          {' · '}
          <a href={`/desk/divers/${page.id}/particulars`}>Particulars</a>
          {' · '}
          <a href={`/desk/divers/${page.id}/moving`}>Moving</a>
        </>
      ) : null}
      {page.safety ? (
        <>
          {' · '}
          <a href={page.safety.href}>Safety and consent</a>
        </>
      ) : null}
    </PageHead>
  )
}
