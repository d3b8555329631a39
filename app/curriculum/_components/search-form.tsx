import { Button } from '@/app/_components/ui/button'

/** The way to what is asked, by a dive's number or by words; it stands in the head of each page of the curriculum. */
export function SearchForm({ query = '' }: { query?: string }) {
  return (
    <search>
      <form action="/curriculum/search" className="curriculum-search">
        <label htmlFor="q" className="text-13 text-soft">
          Search skills, criteria and faults
        </label>
        <div className="flex gap-2">
          <input id="q" name="q" type="search" defaultValue={query} maxLength={200} className="control" />
          <Button>Search</Button>
        </div>
      </form>
    </search>
  )
}
