import { Container, type Renderer } from 'pixi.js';
import type { Action } from '../bench/action.ts';
import type { Observation } from '../bench/observation.ts';
import type { Place } from '../bench/places.ts';
import type { Outcome } from '../bench/port.ts';
import type { Job } from '../scenario/public/job.ts';
import { clearAway, clearOnlyWhenAsked } from './drawing/clearing.ts';
import { createRenderer, type Drawing, type Size } from './drawing/renderer.ts';
import { FrameLoop, type FrameStats } from './frame.ts';
import { type Desk, freshUi } from './handling/desk.ts';
import { allPlaces, placeSpots } from './handling/places.ts';
import { Pointers } from './handling/pointers.ts';
import type { SpotView } from './handling/spot.ts';
import { besideOf, type HungTool, type Layout, layOut, middle } from './layout.ts';
import { bendingMakers, plainMakers } from './makers.ts';
import { FONT } from './materials.ts';
import type { ScaleFraction } from './panel/meterScale.ts';
import { type Situation, workPoint } from './pose.ts';
import type { Point } from './project.ts';
import { Stage } from './stage.ts';
import { studio } from './studio/studio.ts';
import { View } from './view.ts';

export type { Size } from './drawing/renderer.ts';

/** How the bench is drawn. */
export interface BenchSceneOptions {
  readonly reducedMotion: boolean;
  /** Numbers on the bars, counted from the chalk: guided work only. */
  readonly showBarNumbers: boolean;
  /** Angular fraction of the ammeter's scale at which a current stands, on a range; both A. */
  readonly scaleFraction: ScaleFraction;
  /** Words painted on the bench; default true. Picture tests leave them out, for fonts differ. */
  readonly lettering?: boolean;
  /** Puts a painted word into the usage the reader chose; left out, words stay as the code has them. */
  readonly say?: (text: string) => string;
  /** Which way to draw; default auto: WebGL where a graphics processor does it, else the plain canvas. */
  readonly drawing?: Drawing;
}

/** Where the picture hangs, and who hears of what is done on it. */
export interface Hanging {
  /** Element the canvas fills; any size from 300 x 420 CSS px up. */
  readonly host: HTMLElement;
  /** Passes an action to the bench and says what became of it. */
  readonly send: (action: Action) => Outcome;
  /** Told when the bench begins to be looked at closer, and when it is seen whole again. */
  readonly onCloser?: (closer: boolean) => void;
  /** Told when a tool of the rail is pressed, whose drawer then opens. */
  readonly onTool?: (tool: HungTool) => void;
}

/** A bench whose picture is made, or being made, before there is a page to hang it into. */
export interface SetOutScene {
  /** Once; a host of another size than was thought has the picture laid out anew. */
  hang(hanging: Hanging): BenchScene;
  destroy(): void;
}

/** Something touchable on the canvas, CSS px of the host. */
export interface ScenePlace {
  readonly id: string;
  readonly x: number;
  readonly y: number;
  readonly r: number;
  readonly view: SpotView;
}

export interface BenchScene {
  /** Draws an observation; call it whenever the bench reports one. */
  show(seen: Observation): void;
  /** Lays the bench out anew for the size its host has now. */
  resize(): void;
  /** Rings a place in both views, or none. */
  hint(place: Place | null): void;
  /** Closer to where the work is, or back to the whole bench; wheel and two fingers do the same by degrees. */
  lookCloser(closer: boolean): void;
  /** Every touchable thing where it is shown now; a place seen in both views comes twice, the main view first. */
  places(): ScenePlace[];
  stats(): FrameStats;
  destroy(): void;
}

const REFUSAL_MS = 900;
const SHARPEN_MS = 450;
const DETAIL_MS = 260;
/** Device px per CSS px beyond which nothing is painted: memory is short on a school computer. */
const MOST_DETAIL = 3;

/**
 * The workbench as a picture that can be handled. It reads observations and sends actions, and knows nothing else.
 * @throws when the browser offers no way to draw at all
 */
export async function createBenchScene(
  hanging: Hanging,
  job: Job,
  options: BenchSceneOptions,
): Promise<BenchScene> {
  return (await setOutScene(sizeOf(hanging.host), job, options)).hang(hanging);
}

/**
 * The same, with the place where it will hang still to come.
 * @param size of that place
 * @throws when the browser offers no way to draw at all
 */
export async function setOutScene(size: Size, job: Job, options: BenchSceneOptions): Promise<SetOutScene> {
  clearOnlyWhenAsked();
  const [renderer] = await Promise.all([createRenderer(size, options.drawing ?? 'auto'), lettersReady()]);
  return new Scene(size, renderer, job, options);
}

function sizeOf({ clientWidth, clientHeight }: HTMLElement): Size {
  return { width: clientWidth, height: clientHeight };
}

/** Painted words need their letters loaded first; without them the bench still shows, in the system's letters. */
async function lettersReady(): Promise<void> {
  const wanted = Promise.all(
    [600, 700].map((weight) => document.fonts?.load(`${weight} 14px ${FONT}`)),
  ).catch(() => []);
  await Promise.race([wanted, new Promise((done) => setTimeout(done, 400))]);
}

class Scene implements BenchScene, SetOutScene {
  private readonly renderer: Renderer;
  private readonly job: Job;
  private readonly options: BenchSceneOptions;
  private hanging: Hanging | null = null;
  private readonly root = new Container();
  /** Everything on the bench; moved and enlarged when it is looked at closer. */
  private readonly bench = new Container();
  private readonly view = new View(() => this.viewChanged());
  private readonly frames: FrameLoop;
  private readonly pointers: Pointers;
  private readonly ui = freshUi();
  /** What is shown; null until its pictures have come. */
  private stage: Stage | null = null;
  private layout: Layout;
  /** What is being painted to take its place, and for which layout. */
  private next: { readonly stage: Stage; readonly layout: Layout } | null = null;
  private seen: Observation | null = null;
  private hinted: Place | null = null;
  private readonly fullResolution: number;
  private movingResolution: number;
  private sharpen: ReturnType<typeof setTimeout> | null = null;
  private detail: 1 | 2 = 1;
  private detailing: ReturnType<typeof setTimeout> | null = null;
  private wasCloser = false;

  constructor(size: Size, renderer: Renderer, job: Job, options: BenchSceneOptions) {
    this.renderer = renderer;
    this.job = job;
    this.options = options;
    this.root.addChild(this.bench);
    this.fullResolution = renderer.resolution;
    this.movingResolution = renderer.resolution;
    this.layout = layOut(job.armature, size.width, size.height, besideOf(job));
    this.frames = new FrameLoop(
      (now, dt, running) => this.draw(now, dt, running),
      () => this.stepDown(),
    );
    this.view.fit(this.layout);
    this.pointers = new Pointers(renderer.canvas as HTMLCanvasElement, this.desk(), this.view, () =>
      this.blocked(),
    );
    this.rebuild(this.layout);
  }

  hang(hanging: Hanging): BenchScene {
    this.hanging = hanging;
    hanging.host.appendChild(this.renderer.canvas);
    this.resize();
    return this;
  }

  show(seen: Observation): void {
    if (showsAnew(seen, this.seen)) this.closeUpRaised();
    const first = this.seen === null;
    this.seen = seen;
    if (first || seen.stopped) this.pointers.dropAll();
    this.frames.request();
  }

  resize(): void {
    if (!this.hanging) return;
    const { width, height } = sizeOf(this.hanging.host);
    if (width === 0 || height === 0) return;
    const next = layOut(this.job.armature, width, height, besideOf(this.job));
    const layout = this.next?.layout ?? this.layout;
    if (next.width !== layout.width || next.height !== layout.height) this.rebuild(next);
  }

  hint(place: Place | null): void {
    this.hinted = place;
    this.frames.request();
  }

  places(): ScenePlace[] {
    if (!this.seen || !this.stage) return [];
    const { view } = this;
    return allPlaces(this.situation()).map(({ id, view: where, r, ...at }) => {
      return { id, view: where, r: r * view.scale, ...view.toShown(at) };
    });
  }

  stats(): FrameStats {
    return this.frames.stats();
  }

  destroy(): void {
    this.frames.stop();
    if (this.sharpen !== null) clearTimeout(this.sharpen);
    if (this.detailing !== null) clearTimeout(this.detailing);
    this.pointers.destroy();
    this.next?.stage.destroy();
    this.next = null;
    this.stage?.destroy();
    this.root.destroy({ children: true });
    this.renderer.destroy({ removeView: true });
  }

  private build(layout: Layout): Stage {
    const { reducedMotion, showBarNumbers, scaleFraction, lettering = true, say = asItIs } = this.options;
    const detail = Math.min(MOST_DETAIL, this.fullResolution * this.detail);
    return new Stage(this.job, layout, detail, {
      reducedMotion,
      showBarNumbers,
      scaleFraction,
      lettering,
      say,
      redraw: () => this.frames.request(),
      makers: this.renderer.name === 'canvas' ? plainMakers : bendingMakers,
      paint: studio.paint,
    });
  }

  /** What is shown stays until what takes its place has been painted. */
  private rebuild(layout: Layout): void {
    this.next?.stage.destroy();
    const next = { stage: this.build(layout), layout };
    this.next = next;
    void next.stage.ready.then(() => {
      if (this.next === next) this.swap(next);
    });
  }

  private swap({ stage, layout }: { readonly stage: Stage; readonly layout: Layout }): void {
    const old = this.stage;
    this.next = null;
    if (layout !== this.layout) this.layAnew(layout);
    this.stage = stage;
    this.bench.addChild(stage.node);
    old?.node.removeFromParent();
    if (this.draw(performance.now(), 0, false)) this.frames.request();
    old?.destroy();
  }

  private layAnew(layout: Layout): void {
    this.pointers.dropAll();
    this.ui.leads = {};
    this.layout = layout;
    this.view.fit(layout);
    this.renderer.resize(layout.width, layout.height, this.fullResolution);
  }

  lookCloser(closer: boolean): void {
    if (closer) this.view.closeTo(this.seen ? workPoint(this.situation()) : middle(this.layout.endBox));
    else this.view.whole();
  }

  /** What lens or gauge shows stands where the whole bench shows it. */
  private closeUpRaised(): void {
    this.ui.closeUpShut = false;
    this.view.whole();
  }

  private viewChanged(): void {
    const { scale, x, y, closer } = this.view;
    this.bench.scale.set(scale);
    this.bench.position.set(x, y);
    if (closer !== this.wasCloser) this.hanging?.onCloser?.(closer);
    this.wasCloser = closer;
    this.frames?.request();
    this.paintDetailSoon();
  }

  /** Once the eye rests, what is seen closer is painted again with as many pixels as it covers now. */
  private paintDetailSoon(): void {
    if (this.detailing !== null) clearTimeout(this.detailing);
    this.detailing = setTimeout(() => {
      this.detailing = null;
      const wanted = this.view.scale > 1.2 ? 2 : 1;
      if (wanted === this.detail) return;
      this.detail = wanted;
      this.rebuild(this.next?.layout ?? this.layout);
    }, DETAIL_MS);
  }

  /** A slow machine gets fewer pixels while things move, and all of them back when they rest. */
  private stepDown(): void {
    // The plain canvas copies pictures that lie px on px. With fewer px it would mix each from four, and take longer.
    if (this.renderer.name === 'canvas' && this.fullResolution === 1) return;
    this.movingResolution = this.movingResolution > 1 ? 1 : 0.75;
  }

  private sharpness(resolution: number): void {
    if (this.renderer.resolution === resolution) return;
    this.renderer.resize(this.layout.width, this.layout.height, resolution);
  }

  private sharpenSoon(): void {
    if (this.sharpen !== null) clearTimeout(this.sharpen);
    if (this.movingResolution >= this.fullResolution) return;
    this.sharpen = setTimeout(() => {
      this.sharpness(this.fullResolution);
      this.renderer.render(this.root);
    }, SHARPEN_MS);
  }

  private blocked(): boolean {
    return this.stage === null || this.seen === null || this.seen.stopped !== null;
  }

  private situation(): Situation {
    const seen = this.seen!;
    return {
      layout: this.layout,
      part: this.job.armature,
      seen,
      rotationDeg: seen.rotationDeg + this.ui.turning,
      carried: { leads: this.ui.leads },
    };
  }

  private desk(): Desk {
    return {
      ui: this.ui,
      situation: () => this.situation(),
      act: (action, at) => this.act(action, at),
      openTool: (tool) => this.hanging?.onTool?.(tool),
      redraw: () => this.frames.request(),
      now: () => performance.now(),
    };
  }

  private act(action: Action, at: Point): boolean {
    const outcome = this.hanging?.send(action);
    if (outcome?.kind === 'refused') this.ui.refusal = { at, untilMs: performance.now() + REFUSAL_MS };
    this.frames.request();
    return outcome?.kind === 'done';
  }

  private draw(now: number, dt: number, running: boolean): boolean {
    if (!this.seen || !this.stage) return false;
    const s = this.situation();
    const hint = this.hinted ? placeSpots(s, this.hinted) : [];
    const moving = this.stage.update(s, this.ui, hint, now, dt);
    if (running) this.sharpness(Math.min(this.fullResolution, this.movingResolution));
    this.renderer.render(this.root);
    clearAway(now);
    this.sharpenSoon();
    return moving;
  }
}

function asItIs(text: string): string {
  return text;
}

function showsAnew(seen: Observation, before: Observation | null): boolean {
  return shownKey(seen) !== 'null' && shownKey(seen) !== shownKey(before);
}

function shownKey(seen: Observation | null): string {
  return JSON.stringify(seen?.look ?? seen?.gauge ?? null);
}
