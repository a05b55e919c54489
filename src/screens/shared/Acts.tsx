import type { ComponentChildren } from 'preact';

/** A row of buttons that belong together; the name is for those who cannot see that they stand in one row. */
export function Acts(props: { readonly name: string; readonly children: ComponentChildren }) {
  return (
    <fieldset class="acts acts-named">
      <legend class="visually-hidden">{props.name}</legend>
      {props.children}
    </fieldset>
  );
}
