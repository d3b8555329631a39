import fs from 'node:fs'
import net from 'node:net'
import { commandLine } from './processes.mjs'

/** @param {number} port @param {string} host */
export const isFree = (port, host) =>
  new Promise((resolve) => {
    const server = net.createServer()
    server.once('error', () => resolve(false))
    server.listen({ port, host, exclusive: true }, () => server.close(() => resolve(true)))
  })

/** A port that nobody listens on now. @param {string} [host] @returns {Promise<number>} */
export const freePort = (host = '127.0.0.1') =>
  new Promise((resolve, reject) => {
    const server = net.createServer()
    server.once('error', reject)
    server.listen({ port: 0, host }, () => {
      const { port } = /** @type {net.AddressInfo} */ (server.address())
      server.close(() => resolve(port))
    })
  })

/** The first free port from `from` on. @param {number} from @param {string} host */
export async function nextFreePort(from, host) {
  for (let port = from; port < from + 100; port++) if (await isFree(port, host)) return port
  return freePort(host)
}

/** Sockets that listen on the port, by their number in the kernel's table. @param {number} port */
function listeners(port) {
  const wanted = `:${port.toString(16).toUpperCase().padStart(4, '0')}`
  return ['/proc/net/tcp', '/proc/net/tcp6']
    .filter((file) => fs.existsSync(file))
    .flatMap((file) => fs.readFileSync(file, 'utf8').split('\n').slice(1))
    .map((line) => line.trim().split(/\s+/))
    .filter((fields) => fields[1]?.endsWith(wanted) && fields[3] === '0A')
    .map((fields) => `socket:[${fields[9]}]`)
}

/** Who listens there, as far as this user may see it. @param {number} port */
export function holderOf(port) {
  const sockets = listeners(port)
  if (sockets.length === 0) return 'another program'
  for (const pid of fs.readdirSync('/proc').filter((name) => /^\d+$/.test(name))) {
    try {
      const links = fs.readdirSync(`/proc/${pid}/fd`).map((fd) => fs.readlinkSync(`/proc/${pid}/fd/${fd}`))
      if (links.some((link) => sockets.includes(link)))
        return `process ${pid} (${commandLine(Number(pid)).slice(0, 80)})`
    } catch {
      // Another user's process, or one that has just ended.
    }
  }
  return 'a program of another user'
}
