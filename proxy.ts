import { type NextRequest, NextResponse } from 'next/server'

/** Component libraries and our own drawings and grids set style attributes. Scripts and style sheets need the nonce. */
const policy = (nonce: string): string =>
  [
    "default-src 'self'",
    `script-src 'self' 'nonce-${nonce}' 'strict-dynamic'`,
    `style-src-elem 'self' 'nonce-${nonce}'`,
    "style-src-attr 'unsafe-inline'",
    "img-src 'self' data: blob:",
    // A coach plays a clip from wherever the club keeps its films; a page asks for none before that click.
    "media-src 'self' https:",
    "object-src 'none'",
    "base-uri 'none'",
    "form-action 'self'",
    "frame-ancestors 'none'",
    "worker-src 'self'",
  ].join('; ')

/** Gives each page its content security policy; Next reads the nonce from the request and puts it on its scripts. */
export function proxy(request: NextRequest): NextResponse {
  const nonce = Buffer.from(crypto.getRandomValues(new Uint8Array(16))).toString('base64')
  const headers = new Headers(request.headers)
  headers.set('x-nonce', nonce)
  headers.set('content-security-policy', policy(nonce))
  const response = NextResponse.next({ request: { headers } })
  response.headers.set('content-security-policy', policy(nonce))
  return response
}

export const config = {
  matcher: ['/((?!_next/static|_next/image|api/|media/|sw\\.js|manifest\\.webmanifest|icons/|icon\\.svg).*)'],
}
