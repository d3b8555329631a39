import { spawnSync } from 'node:child_process'
import { mkdirSync, mkdtempSync, rmSync, statSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { tell } from '@/seed/clips/dive'
import { type Clip, clips } from '@/seed/clips/dives'
import { cameraFor, drawFrame, frameCount } from '@/seed/clips/draw'

const kept = path.join(import.meta.dirname, '../public/media/clips')

function run(command: string, args: readonly string[]): void {
  const { status, error, stderr } = spawnSync(command, args, { encoding: 'utf8' })
  if (error) throw new Error(`${command} could not be started: on Debian, apt install ffmpeg librsvg2-bin`)
  if (status !== 0) throw new Error(`${command} ended with ${status}: ${stderr}`)
}

/** Draws each frame of a clip and encodes them: VP9, a keyframe each half second so that stepping back is quick. */
function filmOf(clip: Clip, folder: string): string {
  const told = tell(clip.simulated)
  const camera = cameraFor(clip.simulated.height, clip.cameraTilt)
  for (let frame = 0; frame < frameCount(told.length, clip.rate); frame++) {
    const picture = path.join(folder, `${String(frame).padStart(4, '0')}`)
    writeFileSync(`${picture}.svg`, drawFrame(told, clip.simulated.height, camera, frame / clip.rate))
    run('rsvg-convert', ['--output', `${picture}.png`, `${picture}.svg`])
  }
  const file = path.join(kept, `${clip.name}.webm`)
  const pictures = ['-framerate', `${clip.rate}`, '-i', path.join(folder, '%04d.png')]
  // A slower camera is a poorer one: its pictures are squeezed harder.
  const vp9 = [
    '-c:v',
    'libvpx-vp9',
    '-crf',
    clip.rate < 60 ? '54' : '34',
    '-b:v',
    '0',
    '-g',
    `${clip.rate / 2}`,
    '-pix_fmt',
    'yuv420p',
  ]
  run('ffmpeg', [
    '-loglevel',
    'error',
    '-y',
    ...pictures,
    ...vp9,
    '-fflags',
    '+bitexact',
    '-flags:v',
    '+bitexact',
    file,
  ])
  return file
}

mkdirSync(kept, { recursive: true })
for (const clip of clips) {
  const folder = mkdtempSync(path.join(tmpdir(), 'clip-'))
  try {
    const file = filmOf(clip, folder)
    const size = Math.round(statSync(file).size / 1024)
    process.stdout.write(`${path.relative(process.cwd(), file)}: ${clip.shows}, ${size} KB\n`)
  } finally {
    rmSync(folder, { recursive: true })
  }
}
