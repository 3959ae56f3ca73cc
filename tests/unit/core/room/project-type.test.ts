import { describe, expect, expectTypeOf, it } from 'vitest';
import type { z } from 'zod';
import type { Air } from '../../../../core/air/medium';
import type { OctaveHz } from '../../../../core/quantity/bands';
import type {
  AbsorptionByBand,
  Patch,
  Project,
  Reference,
  Row,
  Subwoofer,
  Target,
} from '../../../../core/room/project';
import type { Known } from '../../../../core/room/schema/known';
import { projectSchema } from '../../../../core/room/schema/project';
import { example } from '../../support/rooms';

const room = (): Project => example('basement-bay');

describe('the type of a project', () => {
  it('is what the schema reads, and what it writes can be read again', () => {
    expectTypeOf<z.output<typeof projectSchema>>().toExtend<Project>();
    expectTypeOf<Project>().toExtend<Known<z.input<typeof projectSchema>>>();
    const project: Project = projectSchema.parse(room());
    expect(project).toEqual(room());
  });

  it('names the fields that the program knows, and no other', () => {
    expectTypeOf<keyof Row>().toEqualTypeOf<
      'id' | 'seats' | 'y' | 'x' | 'pitchM' | 'riserM' | 'earHeightM' | 'eyeHeightM'
    >();
    expectTypeOf<keyof AbsorptionByBand>().toEqualTypeOf<`${OctaveHz}`>();
    expectTypeOf<Project['air']>().toEqualTypeOf<Air>();
    // @ts-expect-error: nobody reads a field that only the file knows.
    const unknown: unknown = room().unknown;
    expect(unknown).toBeUndefined();
  });

  it('leaves out what a file leaves out, and holds what depends on the shell', () => {
    expectTypeOf<Pick<Patch, 'hinge'>>().toEqualTypeOf<{ readonly hinge?: 'left' | 'right' }>();
    expectTypeOf<Pick<Subwoofer, 'delayMs'>>().toEqualTypeOf<{ readonly delayMs?: number }>();
    expectTypeOf<Project['screen']['widthM']>().toEqualTypeOf<number>();
    expectTypeOf<Project['seating']['rows']>().toEqualTypeOf<readonly Row[]>();
  });

  it('tells unions apart by what is in them', () => {
    expectTypeOf<Reference>().toEqualTypeOf<
      | { readonly row: string; readonly seat: number }
      | { readonly row: string; readonly middle: true }
    >();
    expectTypeOf<Target['kind']>().toEqualTypeOf<'bs1116' | 'home-cinema' | 'custom'>();
  });

  it('is read-only throughout', () => {
    const project = room();
    // @ts-expect-error: a project is never changed in place.
    expect(() => (project.room.size.width = project.room.size.width)).not.toThrow();
    // @ts-expect-error: nor are its lists.
    expect(project.room.solids.push).toBeDefined();
  });
});
