import { gannetNessStories } from './gannet-ness'
import { harrowPointStories } from './harrow-point'
import { northquayStories } from './northquay'
import { saltmarshStories } from './saltmarsh'
import type { Story } from './story'

/** Every diver of the demo. */
export const stories: readonly Story[] = [
  ...saltmarshStories,
  ...harrowPointStories,
  ...northquayStories,
  ...gannetNessStories,
]
