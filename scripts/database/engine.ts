import fs from 'node:fs'
import { fileURLToPath } from 'node:url'
import type { SchemaEngine } from '@prisma/schema-engine-wasm'
import * as glue from '@prisma/schema-engine-wasm/schema_engine_bg'

/** What the package's glue has besides the engine; its types leave it out. */
interface Glue {
  readonly SchemaEngine: typeof SchemaEngine
  readonly __wbg_set_wasm: (exports: WebAssembly.Exports) => void
}

let engine: Promise<typeof SchemaEngine> | undefined

/** Prisma's schema engine. Its package imports the .wasm file as a module, which Node cannot do without a flag. */
export function loadEngine(): Promise<typeof SchemaEngine> {
  engine ??= instantiate()
  return engine
}

/** The engine reports a panic there before it stops for good. */
Object.assign(globalThis, {
  PRISMA_WASM_PANIC_REGISTRY: {
    set_message(message: string) {
      throw new Error(`Prisma's schema engine failed: ${message}`)
    },
  },
})

async function instantiate(): Promise<typeof SchemaEngine> {
  const place = new URL('./schema_engine_bg.wasm', import.meta.resolve('@prisma/schema-engine-wasm/schema_engine_bg'))
  const module = await WebAssembly.compile(fs.readFileSync(fileURLToPath(place)))
  const { SchemaEngine, __wbg_set_wasm, ...rest } = glue as unknown as Glue
  const { exports } = await WebAssembly.instantiate(module, {
    './schema_engine_bg.js': { ...rest } as WebAssembly.ModuleImports,
  })
  __wbg_set_wasm(exports)
  if (typeof exports.__wbindgen_start === 'function') exports.__wbindgen_start()
  return SchemaEngine
}
