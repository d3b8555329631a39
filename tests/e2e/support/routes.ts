import fs from 'node:fs'

/** Parts of the framework that hold no data of ours. */
const framework = ['/_not-found', '/_global-error']

/** Every page and endpoint of the build that is being served, as it is written: "/desk/divers/[diver]". */
export function listRoutes(): string[] {
  const files = ['.next', '.next-test']
    .map((folder) => `${folder}/app-path-routes-manifest.json`)
    .filter((file) => fs.existsSync(file))
  const [newest] = files.sort((a, b) => fs.statSync(b).mtimeMs - fs.statSync(a).mtimeMs)
  if (!newest) throw new Error('no build manifest was found')
  const routes = Object.values(JSON.parse(fs.readFileSync(newest, 'utf8')) as Record<string, string>)
  return [...new Set(routes)].filter((route) => !framework.includes(route)).sort()
}

/** The route that answers at a path, the one with the fewest open places first; null of none. */
export function routeOf(path: string, routes: readonly string[]): string | null {
  const open = (route: string) => route.split('[').length
  return (
    [...routes]
      .sort((a, b) => open(a) - open(b))
      .find((route) => new RegExp(`^${route.replace(/\[[^\]]+\]/g, '[^/]+')}$`).test(path)) ?? null
  )
}
