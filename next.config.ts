import type { NextConfig } from 'next'

const everywhere = [
  { key: 'X-Content-Type-Options', value: 'nosniff' },
  { key: 'X-Frame-Options', value: 'DENY' },
  { key: 'Referrer-Policy', value: 'same-origin' },
  { key: 'Cross-Origin-Opener-Policy', value: 'same-origin' },
  { key: 'Permissions-Policy', value: 'camera=(), geolocation=(), microphone=(), payment=(), usb=()' },
]

// What answers with data is never a page: nothing in it may run or be framed. Pages get their policy in proxy.ts.
const dataOnly = { key: 'Content-Security-Policy', value: "default-src 'none'; frame-ancestors 'none'" }

const config: NextConfig = {
  output: 'standalone',
  distDir: process.env.PLUMBLINE_DIST ?? '.next',
  outputFileTracingRoot: import.meta.dirname,
  turbopack: { root: import.meta.dirname },
  poweredByHeader: false,
  reactStrictMode: true,
  typedRoutes: false,
  // `npm test` and `npm run validate` check types; a start on someone's machine need not wait for it.
  typescript: { ignoreBuildErrors: true },
  // Browsers ask for this one by themselves where they have not read a page's head yet.
  rewrites: async () => [{ source: '/favicon.ico', destination: '/icon.svg' }],
  headers: async () => [
    { source: '/:path*', headers: everywhere },
    { source: '/api/:path*', headers: [dataOnly, { key: 'Cache-Control', value: 'no-store' }] },
    { source: '/sw.js', headers: [{ key: 'Cache-Control', value: 'no-cache' }] },
  ],
}

export default config
