/* Lets the deck open without a network. The build fills in the version and the files; see scripts/platform/worker.mjs. */
const version = '__VERSION__'
const files = ['__FILES__']
const shell = '/deck'
const own = `plumbline-deck-${version}`

/** The names of files carry a hash of what is in them: one that any older worker has need not be fetched again. */
async function addFile(cache, file) {
  const answer = (await caches.match(file)) ?? (await fetch(file))
  if (!answer.ok) throw new Error(`${file} answered ${answer.status}`)
  await cache.put(file, answer)
}

/** All or nothing: a worker that lacks a file does not install, and the older one goes on. */
async function install() {
  const cache = await caches.open(own)
  await Promise.all(files.map((file) => addFile(cache, file)))
  // Without cookies: the shell is the same for everybody and holds nobody's data.
  const page = await fetch(shell, { credentials: 'omit', cache: 'reload', redirect: 'error' })
  if (!page.ok) throw new Error(`${shell} answered ${page.status}`)
  await cache.put(shell, page)
}

async function activate() {
  for (const name of await caches.keys())
    if (name.startsWith('plumbline-deck-') && name !== own) await caches.delete(name)
  await clients.claim()
}

const noConnection = () =>
  new Response(
    `<!doctype html><html lang="en"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width,initial-scale=1">
<title>No connection</title><style>:root{color-scheme:light dark}body{max-width:32rem;margin:4rem auto;padding:0 1rem;font:1.125rem/1.5 system-ui}a{display:inline-block;padding:.75rem 0;color:inherit}</style></head>
<body><main><h1>No connection</h1><p>This page needs a connection. The deck opens without one, and keeps what you record.</p><p><a href="${shell}">Open the deck</a></p></main></body></html>`,
    {
      status: 503,
      headers: {
        'content-type': 'text/html; charset=utf-8',
        'content-security-policy': "default-src 'none'; style-src 'unsafe-inline'",
      },
    },
  )

const fromCache = async (key, request) => (await (await caches.open(own)).match(key)) ?? fetch(request)
const fromServer = (request) => fetch(request).catch(noConnection)

function answer(event) {
  const { request } = event
  const { origin, pathname } = new URL(request.url)
  if (request.method !== 'GET' || origin !== self.location.origin || pathname.startsWith('/api/')) return
  if (request.mode === 'navigate')
    event.respondWith(pathname === shell ? fromCache(shell, request) : fromServer(request))
  else if (pathname.startsWith('/_next/static/')) event.respondWith(fromCache(pathname, request))
}

self.addEventListener('install', (event) => event.waitUntil(install()))
self.addEventListener('activate', (event) => event.waitUntil(activate()))
self.addEventListener('fetch', answer)
// A deck in use is not changed under the coach's thumb: she says when.
self.addEventListener('message', ({ data }) => {
  if (data === 'take over') self.skipWaiting()
})
