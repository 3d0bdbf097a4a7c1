import { describe, expect, test } from 'vitest';
import { keyDown, keyUp, type Press } from '../../src/ui/keyboard';

const press = (key: string, focus: Press['focus'] = 'page', repeat = false): Press => ({ key, focus, repeat });

describe('keys of pedals, page turners and remotes', () => {
  test.each([
    ['a page turner, forward', press('PageDown'), { act: 'button', place: 0 }],
    ['a remote, forward', press('ArrowRight'), { act: 'button', place: 0 }],
    ['a pedal that sends Enter', press('Enter'), { act: 'button', place: 0 }],
    ['second button', press('Home'), { act: 'button', place: 1 }],
    ['third button', press('End'), { act: 'button', place: 2 }],
    ['a page turner, back', press('PageUp'), { act: 'button', place: 3 }],
    ['a remote, back', press('ArrowLeft'), { act: 'button', place: 3 }],
    ['push-to-talk', press(' '), { act: 'talk', down: true }],
    ['stop', press('Escape'), { act: 'stop' }],
  ])('%s', (_name, given, act) => {
    expect(keyDown(given)).toEqual(act);
  });

  test.each(['PageDown', 'Enter', 'Home', ' '])('a held %j counts once and does not scroll the page', (key) => {
    expect(keyDown(press(key, 'page', true))).toEqual({ act: 'nothing' });
  });

  test('a held Escape stops once', () => {
    expect(keyDown(press('Escape', 'page', true))).toBeNull();
  });

  test.each<[string, Press]>([
    ['typing a space', press(' ', 'text')],
    ['moving in a field', press('Home', 'text')],
    ['sending what was typed', press('Enter', 'text')],
    ['Enter on a button is the button’s', press('Enter', 'control')],
    ['a space on a button is the button’s', press(' ', 'control')],
    ['turning a page while a sheet lies over the Bench', press('PageDown', 'sheet')],
    ['Enter while a sheet lies over the Bench', press('Enter', 'sheet')],
  ])('does nothing when %s', (_name, given) => {
    expect(keyDown(given)).toBeNull();
  });

  test.each(['page', 'control', 'text', 'sheet'] as const)('Escape stops with the focus on a %s', (focus) => {
    expect(keyDown(press('Escape', focus))).toEqual({ act: 'stop' });
  });

  test('a page turner works with the focus on a button', () => {
    expect(keyDown(press('PageDown', 'control'))).toEqual({ act: 'button', place: 0 });
  });

  test('letting go of the space bar always ends push-to-talk; other keys end nothing', () => {
    expect(keyUp(' ')).toEqual({ act: 'talk', down: false });
    expect(keyUp('PageDown')).toBeNull();
  });

  // WCAG 2.2, 2.1.4: no shortcut of one letter, digit, mark or symbol.
  test('no printable key but the space bar does anything', () => {
    const printable = Array.from({ length: 95 - 1 }, (_, i) => String.fromCharCode(33 + i));
    expect(printable.filter((key) => keyDown(press(key)) !== null)).toEqual([]);
  });
});
