import { createHash } from 'node:crypto'

/** SHA-256 of the text's UTF-8 bytes (FIPS 180-4), as 64 lower-case hexadecimal digits. Apart, since a browser has no node:crypto. */
export const sha256Hex = (text: string): string => createHash('sha256').update(text, 'utf8').digest('hex')
