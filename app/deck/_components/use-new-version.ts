import { useEffect, useState } from 'react'

/** Offers a worker that has its files and waits, unless it is the first: then nothing older runs. */
function watch(registration: ServiceWorkerRegistration, offer: (worker: ServiceWorker) => void): void {
  const look = (worker: ServiceWorker | null) => {
    if (worker?.state === 'installed' && navigator.serviceWorker.controller) offer(worker)
  }
  look(registration.waiting)
  registration.addEventListener('updatefound', () => {
    const { installing } = registration
    installing?.addEventListener('statechange', () => look(installing))
  })
}

/** Lets the deck open without a network, and answers how to change to a newer deck once one is here; null while there is none. */
export function useNewVersion(): (() => void) | null {
  const [waiting, setWaiting] = useState<ServiceWorker | null>(null)
  useEffect(() => {
    // Only over https and on this machine; elsewhere the deck needs the network to open.
    if (!('serviceWorker' in navigator)) return
    const registered = navigator.serviceWorker.register('/sw.js', { updateViaCache: 'none' })
    void registered.then((registration) => watch(registration, setWaiting)).catch(() => {})
    // A deck that is open all day asks when the coach comes back to it.
    const ask = () => {
      if (document.visibilityState === 'visible')
        void registered.then((registration) => registration.update()).catch(() => {})
    }
    document.addEventListener('visibilitychange', ask)
    return () => document.removeEventListener('visibilitychange', ask)
  }, [])
  if (!waiting) return null
  return () => {
    navigator.serviceWorker.addEventListener('controllerchange', () => window.location.reload(), { once: true })
    waiting.postMessage('take over')
  }
}
