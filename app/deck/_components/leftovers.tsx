'use client'

import { useEffect, useState } from 'react'
import { holderIn } from '../device/holder'
import { tidyDevice } from '../device/keeping'

/** On the page where people come and go: wipes what whoever signed out left on this device, and says what still waits there. */
export function Leftovers() {
  const [waiting, setWaiting] = useState(0)
  useEffect(() => {
    void tidyDevice(holderIn(document.cookie), Date.now()).then(setWaiting, () => {})
  }, [])
  if (waiting === 0) return null
  return (
    <p role="status">
      {waiting === 1 ? 'One entry' : `${waiting} entries`} recorded on this device could not be sent yet.{' '}
      {waiting === 1 ? 'It is' : 'They are'} kept for the coach who recorded them, and go when that coach signs in here
      and opens the deck.
    </p>
  )
}
