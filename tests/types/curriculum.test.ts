import { describe, expectTypeOf, it } from 'vitest'
import type { z } from 'zod'
import type { Curriculum } from '@/lib/curriculum/edition/curriculum'
import type { EditionReading } from '@/lib/curriculum/edition/publish'
import type { AskedMeasure, besidePhases, MeasureInstant } from '@/lib/curriculum/measure/model'
import type { askedMeasureSchema } from '@/lib/curriculum/measure/schema'
import type { Criterion, EditionDocument, Fault, Phase, Skill, Standard } from '@/lib/curriculum/model'
import type { Requirement, RequirementKind, RequirementReader } from '@/lib/curriculum/requirement/model'
import type { nodeSchemas } from '@/lib/curriculum/requirement/schema'
import type { criterionSchema, editionSchema, faultSchema, skillSchema, standardSchema } from '@/lib/curriculum/schema'

type Frozen<Value> = Value extends object ? { readonly [Key in keyof Value]: Frozen<Value[Key]> } : Value

type Node<Kind extends RequirementKind> = Extract<Requirement, { kind: Kind }>
type Written<Kind extends RequirementKind> = Frozen<z.infer<(typeof nodeSchemas)[Kind]>>

describe('the schema and the model say the same', () => {
  it('reads an edition as exactly an EditionDocument, readonly-ness aside', () => {
    expectTypeOf<Frozen<z.infer<typeof editionSchema>>>().toEqualTypeOf<Frozen<EditionDocument>>()
    expectTypeOf<Frozen<z.infer<typeof skillSchema>>>().toEqualTypeOf<Frozen<Skill>>()
    expectTypeOf<Frozen<z.infer<typeof criterionSchema>>>().toEqualTypeOf<Frozen<Criterion>>()
    expectTypeOf<Frozen<z.infer<typeof askedMeasureSchema>>>().toEqualTypeOf<Frozen<AskedMeasure>>()
    expectTypeOf<Frozen<z.infer<typeof faultSchema>>>().toEqualTypeOf<Frozen<Fault>>()
    expectTypeOf<Frozen<z.infer<typeof standardSchema>>>().toEqualTypeOf<Frozen<Standard>>()
  })

  it('takes measures at phases, and at what is beside them', () => {
    expectTypeOf<Exclude<MeasureInstant, (typeof besidePhases)[number]>>().toExtend<Phase>()
  })

  it('has a written form for each kind of requirement, and for no other', () => {
    expectTypeOf<keyof typeof nodeSchemas>().toEqualTypeOf<RequirementKind>()
    expectTypeOf<Written<'all'>>().toEqualTypeOf<Frozen<Node<'all'>>>()
    expectTypeOf<Written<'any'>>().toEqualTypeOf<Frozen<Node<'any'>>>()
    expectTypeOf<Written<'atLeast'>>().toEqualTypeOf<Frozen<Node<'atLeast'>>>()
    expectTypeOf<Written<'signOff'>>().toEqualTypeOf<Frozen<Node<'signOff'>>>()
    expectTypeOf<Written<'criterion'>>().toEqualTypeOf<Frozen<Node<'criterion'>>>()
    expectTypeOf<Written<'level'>>().toEqualTypeOf<Frozen<Node<'level'>>>()
    expectTypeOf<Written<'boardMove'>>().toEqualTypeOf<Frozen<Node<'boardMove'>>>()
    expectTypeOf<Written<'age'>>().toEqualTypeOf<Frozen<Node<'age'>>>()
    expectTypeOf<Written<'diveList'>>().toEqualTypeOf<Frozen<Node<'diveList'>>>()
    expectTypeOf<Written<'venue'>>().toEqualTypeOf<Frozen<Node<'venue'>>>()
  })
})

describe('a reader of requirements is exhaustive', () => {
  const complete: RequirementReader<number, null> = {
    all: () => 0,
    any: () => 0,
    atLeast: () => 0,
    signOff: () => 0,
    criterion: () => 0,
    level: () => 0,
    boardMove: () => 0,
    age: () => 0,
    diveList: () => 0,
    venue: () => 0,
  }

  it('does not compile with a kind left out', () => {
    const { venue: _, ...rest } = complete
    // @ts-expect-error a reader without a case for `venue` must be refused
    const incomplete: RequirementReader<number, null> = rest
    expectTypeOf(incomplete).not.toBeAny()
  })

  it('does not compile with a kind that is not of the algebra', () => {
    // @ts-expect-error there is no `not`
    const extended: RequirementReader<number, null> = { ...complete, not: () => 0 }
    expectTypeOf(extended).not.toBeAny()
  })

  it('has no negation among its kinds', () => {
    expectTypeOf<Extract<RequirementKind, 'not' | 'none'>>().toBeNever()
  })
})

// Never called: the compiler is the test.
const writesToPublished = (document: EditionDocument, curriculum: Curriculum, reading: EditionReading) => {
  // @ts-expect-error a published edition keeps its title
  document.title = 'Another'
  // @ts-expect-error its skills are not added to
  document.skills.push(document.skills[0])
  // @ts-expect-error its levels are not reordered
  document.levels.sort()
  // @ts-expect-error the index keeps its hash
  curriculum.hash = ''
  // @ts-expect-error the index cannot be given another pair
  curriculum.pairs.set('a@1m', curriculum.pairs.get('b@1m'))
  // @ts-expect-error a document that was refused has no hash to be published by
  return reading.hash
}

describe('published editions cannot be written to', () => {
  it('by type', () => {
    expectTypeOf(writesToPublished).parameter(0).toEqualTypeOf<EditionDocument>()
  })
})
