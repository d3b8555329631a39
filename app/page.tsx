import { redirect } from 'next/navigation'
import { loadHome } from './loader'

export default async function HomePage() {
  redirect(await loadHome())
}
