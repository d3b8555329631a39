import type { MetadataRoute } from 'next'
import { productName, tagline } from '@/lib/platform/product'

/** What a phone needs to put the deck on its home screen. */
export default function manifest(): MetadataRoute.Manifest {
  return {
    id: '/deck',
    name: productName,
    short_name: productName,
    description: tagline,
    lang: 'en',
    start_url: '/deck',
    scope: '/',
    display: 'standalone',
    background_color: '#fbfbf8',
    theme_color: '#fbfbf8',
    icons: [
      { src: '/icons/bob-192.png', sizes: '192x192', type: 'image/png', purpose: 'any' },
      { src: '/icons/bob-512.png', sizes: '512x512', type: 'image/png', purpose: 'any' },
      { src: '/icons/bob-maskable-512.png', sizes: '512x512', type: 'image/png', purpose: 'maskable' },
    ],
  }
}
