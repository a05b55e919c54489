import { Container, type Renderer } from 'pixi.js';
import { type Action, MAT_PARTS, type MatPart } from '../bench/action.ts';
import type { Observation } from '../bench/observation.ts';
import type { Place } from '../bench/places.ts';
import type { Outcome } from '../bench/port.ts';
import type { Job } from '../scenario/public/job.ts';
import { createRenderer, type Drawing } from './drawing/renderer.ts';
import { FrameLoop, type FrameStats } from './frame.ts';
import { type Desk, freshUi } from './handling/desk.ts';
import { allPlaces, placeSpots } from './handling/places.ts';
import { Pointers } from './handling/pointers.ts';
import type { SpotView } from './handling/spot.ts';
import { layOut } from './layout.ts';
import { bendingMakers, plainMakers } from './makers.ts';
import { FONT } from './materials.ts';
import type { ScaleFraction } from './panel/meter.ts';
import type { Situation } from './pose.ts';
import type { Point } from './project.ts';
import { Stage } from './stage.ts';

export interface BenchSceneOptions {
  readonly reducedMotion: boolean;
  /** Numbers on the bars, counted from the chalk: guided work only. */
  readonly showBarNumbers: boolean;
  /** Angular fraction of the ammeter's scale at which a current stands, on a range; both A. */
  readonly scaleFraction: ScaleFraction;
  /** Words painted on the bench; default true. Picture tests leave them out, for fonts differ. */
  readonly lettering?: boolean;
  /** Which way to draw; default auto: WebGL where a graphics processor does it, else the plain canvas. */
  readonly drawing?: Drawing;
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
  /** Every touchable thing where it lies now; a place seen in both views comes twice, the main view first. */
  places(): ScenePlace[];
  stats(): FrameStats;
  destroy(): void;
}

const REFUSAL_MS = 900;
const SHARPEN_MS = 450;

/**
 * The workbench as a picture that can be handled. It reads observations and sends actions, and knows nothing else.
 * @param host element the canvas fills; any size from 300 x 420 CSS px up
 * @param send passes an action to the bench and says what became of it
 * @throws when the browser offers no way to draw at all
 */
export async function createBenchScene(
  host: HTMLElement,
  job: Job,
  send: (action: Action) => Outcome,
  options: BenchSceneOptions,
): Promise<BenchScene> {
  const [renderer] = await Promise.all([createRenderer(host, options.drawing ?? 'auto'), lettersReady()]);
  return new Scene(host, renderer, job, send, options);
}

/** Painted words need their letters loaded first; without them the bench still shows, in the system's letters. */
async function lettersReady(): Promise<void> {
  const wanted = document.fonts?.load(`600 14px ${FONT}`).catch(() => []);
  await Promise.race([wanted, new Promise((done) => setTimeout(done, 400))]);
}

class Scene implements BenchScene {
  private readonly host: HTMLElement;
  private readonly renderer: Renderer;
  private readonly job: Job;
  private readonly send: (action: Action) => Outcome;
  private readonly options: BenchSceneOptions;
  private readonly root = new Container();
  private readonly frames: FrameLoop;
  private readonly pointers: Pointers;
  private readonly ui = freshUi();
  private stage: Stage;
  private layout;
  private seen: Observation | null = null;
  private hinted: Place | null = null;
  private readonly fullResolution: number;
  private movingResolution: number;
  private sharpen: ReturnType<typeof setTimeout> | null = null;

  constructor(
    host: HTMLElement,
    renderer: Renderer,
    job: Job,
    send: (action: Action) => Outcome,
    options: BenchSceneOptions,
  ) {
    this.host = host;
    this.renderer = renderer;
    this.job = job;
    this.send = send;
    this.options = options;
    this.fullResolution = renderer.resolution;
    this.movingResolution = renderer.resolution;
    this.layout = layOut(job.armature, host.clientWidth, host.clientHeight, partsOf(job));
    this.stage = this.build();
    this.frames = new FrameLoop(
      (now, dt) => this.draw(now, dt),
      () => this.stepDown(),
    );
    this.pointers = new Pointers(renderer.canvas as HTMLCanvasElement, this.desk(), () => this.blocked());
  }

  show(seen: Observation): void {
    if (seen.look !== this.seen?.look && seen.look !== null && !sameLook(seen, this.seen))
      this.ui.lensClosed = false;
    const first = this.seen === null;
    this.seen = seen;
    if (first || seen.stopped) this.pointers.dropAll();
    this.frames.request();
  }

  resize(): void {
    const { clientWidth, clientHeight } = this.host;
    if (clientWidth === 0 || clientHeight === 0) return;
    const next = layOut(this.job.armature, clientWidth, clientHeight, partsOf(this.job));
    if (next.width === this.layout.width && next.height === this.layout.height) return;
    this.pointers.dropAll();
    this.ui.leads = {};
    this.layout = next;
    this.renderer.resize(this.layout.width, this.layout.height, this.fullResolution);
    this.rebuild();
  }

  hint(place: Place | null): void {
    this.hinted = place;
    this.frames.request();
  }

  places(): ScenePlace[] {
    return this.seen ? allPlaces(this.situation()) : [];
  }

  stats(): FrameStats {
    return this.frames.stats();
  }

  destroy(): void {
    this.frames.stop();
    if (this.sharpen !== null) clearTimeout(this.sharpen);
    this.pointers.destroy();
    this.stage.destroy();
    this.root.destroy();
    this.renderer.destroy({ removeView: true });
  }

  private build(): Stage {
    const { reducedMotion, showBarNumbers, scaleFraction, lettering = true } = this.options;
    const stage = new Stage(this.job, this.layout, this.fullResolution, {
      reducedMotion,
      showBarNumbers,
      scaleFraction,
      lettering,
      redraw: () => this.frames.request(),
      makers: this.renderer.name === 'canvas' ? plainMakers : bendingMakers,
    });
    this.root.addChild(stage.node);
    return stage;
  }

  private rebuild(): void {
    const old = this.stage;
    this.root.removeChild(old.node);
    this.stage = this.build();
    if (this.seen) this.draw(performance.now(), 0);
    old.destroy();
    this.frames.request();
  }

  /** A slow machine gets fewer pixels while things move, and all of them back when they rest. */
  private stepDown(): void {
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
    return this.seen === null || this.seen.stopped !== null;
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
      redraw: () => this.frames.request(),
      now: () => performance.now(),
    };
  }

  private act(action: Action, at: Point): boolean {
    const outcome = this.send(action);
    if (outcome.kind === 'refused') this.ui.refusal = { at, untilMs: performance.now() + REFUSAL_MS };
    this.frames.request();
    return outcome.kind === 'done';
  }

  private draw(now: number, dt: number): boolean {
    if (!this.seen) return false;
    const s = this.situation();
    const hint = this.hinted ? placeSpots(s, this.hinted) : [];
    const moving = this.stage.update(s, this.ui, hint, now, dt);
    this.sharpness(Math.min(this.fullResolution, this.movingResolution));
    this.renderer.render(this.root);
    this.sharpenSoon();
    return moving;
  }
}

function sameLook(a: Observation, b: Observation | null): boolean {
  return a.look?.place === b?.look?.place && a.look?.sees.join() === b?.look?.sees.join();
}

function partsOf(job: Job): readonly MatPart[] {
  return MAT_PARTS.filter((part) => job[part] !== null);
}
