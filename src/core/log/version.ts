/**
 * The version of the entries written now. It is raised with every field and every kind that is added: a reader takes no
 * notice of fields it does not know, and to an older program an adapter's angle left out is an adapter straight ahead.
 * What is newer than a program is refused by it as newer (`newer-log`), never guessed and never called damaged.
 *
 * Raising it needs a step in `upgrade.ts`, a kept job of the old version and the new list of fields in tests/core/log,
 * where a test holds the fields of every kind to this number.
 *
 * 2: `wrenches-owned`; an adapter's degrees and the people of a job are always told; a torque not over its floor may
 * have a unit of its own.
 */
export const LOG_VERSION = 2;
