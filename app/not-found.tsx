import { LinkButton } from './_components/ui/button'
import { PageHead, Sheet } from './_components/ui/sheet'

export default function NotFound() {
  return (
    <Sheet>
      <PageHead sentence="There is nothing here for you." margin="404">
        <p>
          The address may be mistyped, or what stands here belongs to another club. Nothing was changed. If a colleague
          sent you the link, ask which club it is about and whether you coach there.
        </p>
        <p className="mt-5">
          <LinkButton href="/">Go to the start</LinkButton>
        </p>
      </PageHead>
    </Sheet>
  )
}
