import type { Fit } from '@/lib/assessment/measure/fit'
import type { Place } from './options'
import { middleOnMiddle, type Placement, type Size } from './placement'

/** How the second lies on the first by what was measured; by the middles of the pictures where nothing was. */
export function placementFor(
  fits: readonly Fit[],
  place: Place,
  sizes: Readonly<Record<'first' | 'second', Size>>,
  mirrored: boolean,
): Placement {
  const rough = middleOnMiddle(sizes.first, sizes.second, mirrored)
  const fit = fits.find((one) => one.place === place)
  if (!fit) return rough
  const { from, to, scale, up } = fit
  return { from, to, scale: scale ?? rough.scale, turn: up.first - (mirrored ? -up.second : up.second), mirrored }
}

/** What can coincide: what was measured in both, and always the middles. */
export const placesFor = (fits: readonly Fit[]): Place[] => [...fits.map(({ place }) => place), 'middle']

/** What does coincide: what was asked for, if it was placed in both pictures, else the first that was. */
export function placeFrom(fits: readonly Fit[], asked: Place): Place {
  const places = placesFor(fits)
  return places.includes(asked) ? asked : (places[0] ?? 'middle')
}
