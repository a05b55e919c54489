import './bench.css';

/** The bench's page with nothing in it. */
const EMPTY = `
  <div class="bench-page">
    <div class="bench-bar"></div>
    <div class="bench-main">
      <div class="bench-side">
        <div class="bench-stage"></div>
        <div class="tray"></div>
        <div class="bench-senses"></div>
        <div class="words"></div>
      </div>
    </div>
  </div>`;

/**
 * What the picture of the bench will measure in this window, CSS px, found with the page's own styles. A guess: where
 * a name is so long that the bar takes a second line, the picture is laid out anew once it hangs.
 */
export function pictureSize(): { readonly width: number; readonly height: number } {
  const ground = document.createElement('div');
  ground.className = 'bench-measure';
  ground.innerHTML = EMPTY;
  document.body.append(ground);
  const { clientWidth: width, clientHeight: height } = ground.querySelector('.bench-stage')!;
  ground.remove();
  return { width, height };
}
