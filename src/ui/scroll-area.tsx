import type { ComponentChildren, Ref } from 'preact';

type ScrollAreaProps = {
  readonly class: string;
  readonly label: string;
  readonly children: ComponentChildren;
  readonly inner?: Ref<HTMLElement>;
};

/** A part of the screen that scrolls inside itself when its content is too long, by finger and by keyboard alike. */
export function ScrollArea({ class: name, label, children, inner }: ScrollAreaProps) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: without the focus it could not be scrolled by keyboard
    <section ref={inner ?? null} class={name} aria-label={label} tabIndex={0}>
      {children}
    </section>
  );
}
