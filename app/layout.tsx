import type { Metadata, Viewport } from 'next'
import localFont from 'next/font/local'
import { connection } from 'next/server'
import type { ReactNode } from 'react'
import { productName, tagline } from '@/lib/platform/product'
import './globals.css'

const latin = localFont({
  src: '../node_modules/@fontsource-variable/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-wght-normal.woff2',
  variable: '--font-latin',
  weight: '200 800',
  display: 'swap',
})

// Only for names such as Łukasz; without a fallback of its own, or Arial would take its letters before this file.
const latinExt = localFont({
  src: '../node_modules/@fontsource-variable/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-ext-wght-normal.woff2',
  variable: '--font-latin-ext',
  weight: '200 800',
  display: 'swap',
  preload: false,
  adjustFontFallback: false,
  declarations: [
    {
      prop: 'unicode-range',
      value:
        'U+0100-02BA,U+02BD-02C5,U+02C7-02CC,U+02CE-02D7,U+02DD-02FF,U+1D00-1DBF,U+1E00-1E9F,U+1EF2-1EFF,U+2020,U+20A0-20AB,U+20AD-20C0,U+2113,U+2C60-2C7F,U+A720-A7FF',
    },
  ],
})

export const metadata: Metadata = {
  title: { default: productName, template: `%s · ${productName}` },
  description: tagline,
}

export const viewport: Viewport = {
  width: 'device-width',
  initialScale: 1,
  colorScheme: 'light dark',
  themeColor: [
    { media: '(prefers-color-scheme: light)', color: '#fbfbf8' },
    { media: '(prefers-color-scheme: dark)', color: '#0d161a' },
  ],
}

export default async function RootLayout({ children }: { children: ReactNode }) {
  // A page built ahead carries no nonce, and its scripts would be refused.
  await connection()
  return (
    <html lang="en" className={`${latinExt.variable} ${latin.variable}`}>
      <body>
        <a className="skip-link" href="#main">
          To the content
        </a>
        {children}
      </body>
    </html>
  )
}
