import { harrowPointStories } from './harrow-point'
import { saltmarshStories } from './saltmarsh'
import type { Story } from './story'

/** The sixteen divers of the demo. */
export const stories: readonly Story[] = [...saltmarshStories, ...harrowPointStories]
