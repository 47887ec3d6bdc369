/**
 * Makes the records that are sent. Names and values are those of observations.csv. Everything is fixed when the
 * function returns: id, time, clock offset, child, skill, step and help.
 */
import { uuidv7 } from './uuid.js';
import { offsetMs, stamp } from './clock.js';

function base(child) {
  const now = new Date();
  return {
    id: uuidv7(now.getTime()),
    observed_at: stamp(now),
    child,
    skill: null,
    task: null,
    step: null,
    help: 'none',
    kind: 'table',
    tags: [],
    note: null,
    clock_offset_ms: offsetMs(),
  };
}

/**
 * The help a look is recorded with. Where objects belong to the task by nature, cubes on the table are the task and
 * no help; a prompt or a shown way outweighs cubes, because more help says less about the child alone.
 */
export function helpOf(step, skill, cubesOut, extraHelp) {
  if (extraHelp === 'prompt' || extraHelp === 'modelled') {
    return extraHelp;
  }
  return cubesOut && !(skill.objectsBelong ?? []).includes(step) ? 'cubes' : 'none';
}

/** A look at one child using one way on one task. */
export function look(child, skill, task, phrase, cubesOut, extraHelp) {
  return {
    ...base(child),
    skill: skill.code,
    task: task || null,
    step: phrase.step,
    help: helpOf(phrase.step, skill, cubesOut, extraHelp),
    tags: [phrase.code],
  };
}

/** A sentence about a child without a step. */
export function note(child, text) {
  return { ...base(child), note: text };
}

/** A record that stands in for one that may already have left the tablet: what was seen and when stay the same. */
export function correction(record, change) {
  return {
    ...record,
    ...change,
    id: uuidv7(),
    replaces: record.id,
  };
}

/** A record that takes another back and puts nothing in its place. */
export function withdrawal(record) {
  return correction(record, { withdrawn: true, note: null, tags: [] });
}
