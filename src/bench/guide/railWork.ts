import { BRUSHES, type BrushIndex, type GaugeKind, type PartKind } from '../action.ts';
import type { SheetLine } from '../paper.ts';
import { barPlace, type LeadId, PANEL_LEADS, type Place, partOf } from '../places.ts';
import { placeWords } from '../placeWords.ts';
import { isMatPart } from '../state.ts';
import { BRUSH_WORDS, PART_WORDS } from '../toolWords.ts';
import { partOfBrush } from '../touched.ts';
import { liftedOut, takenUp } from './matWork.ts';
import { type Asked, doing, first, type GuideStep, hungUp, powered, writing } from './step.ts';

/** Insulation tester, millivolt drop and gauges. */

/** Where the tester's clips go on each part: what must not be joined. */
const ACROSS: Readonly<Record<PartKind, readonly (readonly [Place, Place])[]>> = {
  armature: [['shaft', 'bar:0']],
  fieldFrame: [['field:case', 'field:brush1']],
  brushPlate: [
    ['plate:metal', 'plate:insulated1'],
    ['plate:metal', 'plate:insulated2'],
  ],
};

/** The insulation tester on one part after the other. */
export function megohmWork(asked: Asked): GuideStep | null {
  return first(
    ...asked.job.parts.flatMap((part) => ACROSS[part].map((pair) => () => insulation(part, pair, asked))),
    () => clipsOff(asked),
  );
}

function insulation(part: PartKind, [one, other]: readonly [Place, Place], asked: Asked): GuideStep | null {
  const { seen, lines } = asked;
  const written = lines.some((line) => line.test === 'megohm' && isAbout(line, part, other));
  if (written) return seen.leads['tester.2'].touches === other ? emptied(asked) : null;
  return first(
    () => (liesElsewhere(asked, one, other) ? clipsOff(asked) : null),
    () => hungUp([...PANEL_LEADS, 'drop.1', 'drop.2'], asked),
    () => powered('off', asked, 'The tester measures the part alone: growler off.'),
    () =>
      isMatPart(part)
        ? takenUp(part, asked)
        : liftedOut(
            asked,
            'In the cradle its core is joined to the bench, and the bench would be tested with it.',
          ),
    () => clipped('tester.1', one, asked),
    () => clipped('tester.2', other, asked),
    () =>
      seen.tester.pressed
        ? writing(
            'megohm',
            'Wait until the display stands still and write down what it shows.',
            'A lamp says only go or no go: tens of kilohms leave it dark. This gives the figure.',
          )
        : doing(
            { type: 'tester.press', on: true },
            'Press the button of the tester, hands off the metal.',
            'Several hundred volts stand between its clips while it is down.',
            'tester',
          ),
  );
}

/** A clip still lies where the reading before this one was taken. */
function liesElsewhere({ seen: { leads } }: Asked, one: Place, other: Place): boolean {
  const away = (lead: LeadId, place: Place) => leads[lead].touches !== null && leads[lead].touches !== place;
  return away('tester.1', one) || away('tester.2', other);
}

function isAbout(line: SheetLine, part: PartKind, at: Place): boolean {
  if ((line.part ?? 'armature') !== part) return false;
  return part !== 'brushPlate' || line.at === at;
}

/** Button up and the part discharged, the clips still on. */
function emptied({ seen }: Asked): GuideStep | null {
  if (seen.tester.pressed) {
    return doing(
      { type: 'tester.press', on: false },
      'Let the button go.',
      'The reading is written down; nothing is gained by leaving the voltage on.',
      'tester',
    );
  }
  if (seen.tester.discharged) return null;
  return doing(
    { type: 'tester.discharge' },
    'Discharge the part through the tester.',
    'A winding keeps what it was charged with: the next hand would feel it.',
    'tester',
  );
}

function clipsOff(asked: Asked): GuideStep | null {
  return emptied(asked) ?? hungUp(['tester.1', 'tester.2'], asked);
}

/** A clip on a place: taken, put there, left there. */
function clipped(lead: LeadId, place: Place, { seen, job }: Asked): GuideStep | null {
  const { at, touches } = seen.leads[lead];
  if (at === 'clip' && touches === place) return null;
  const because = 'A clip stays where it is put, so that both hands are off the metal.';
  const words = placeWords(job.armature, seen, place);
  if (at !== 'hand') {
    return doing(
      { type: 'lead.take', lead, grip: 'handle' },
      `Take a clip by its handle: it goes on ${words}.`,
      because,
      lead,
    );
  }
  return touches === place
    ? doing({ type: 'lead.clamp', lead }, 'Leave it clipped on.', because, lead)
    : doing({ type: 'lead.touch', lead, place }, `Put the clip on ${words}.`, because, place);
}

/** The drop of both field branches, then of every pair of neighbouring bars. */
export function millivoltWork(asked: Asked): GuideStep | null {
  const { parts } = asked.job;
  return first(
    () => (parts.includes('fieldFrame') ? branches(asked) : null),
    () => (parts.includes('armature') ? barPairs(asked) : null),
    () => feedOff(asked),
    () => hungUp(['drop.1', 'drop.2'], asked),
  );
}

function branches(asked: Asked): GuideStep | null {
  const brush = (['field:brush1', 'field:brush2'] as const).find(
    (place) => !asked.lines.some((line) => line.test === 'millivolt' && line.at === place),
  );
  if (brush === undefined) return null;
  return first(
    () => dropOff('fieldFrame', asked),
    () => hungUp([...PANEL_LEADS, 'tester.1', 'tester.2'], asked),
    () => powered('off', asked, 'The feed is a steady current of its own: growler off.'),
    () => takenUp('fieldFrame', asked),
    () =>
      asked.seen.brushesApart
        ? null
        : doing(
            { type: 'brushes.part' },
            'Keep the two field brushes apart.',
            'Each branch is fed by itself.',
            'fieldFrame',
          ),
    () => dropOver('field:terminal', brush, 'field:terminal', brush, asked),
  );
}

function barPairs(asked: Asked): GuideStep | null {
  const { seen, lines, job } = asked;
  const { bars } = job.armature;
  const written = (count: number) =>
    lines.some(
      (line) => line.test === 'millivolt' && line.count === count && (line.part ?? 'armature') === 'armature',
    );
  const count = Array.from({ length: bars }, (_, n) => n).find((n) => !written(n));
  if (count === undefined) return null;
  const quarter = Math.round(bars / 4);
  const from = (seen.chalkedBar ?? 0) + Math.floor(count / quarter) * quarter;
  const bar = (n: number): Place => barPlace(n % bars);
  const at = (seen.chalkedBar ?? 0) + count;
  return first(
    () => dropOff('armature', asked),
    () => hungUp([...PANEL_LEADS, 'tester.1', 'tester.2'], asked),
    () => liftedOut(asked, 'Growler and cradle have no part in this test.'),
    () =>
      seen.chalkedBar === null
        ? doing(
            { type: 'chalk.mark', bar: 0 },
            'Chalk a bar.',
            'Real bars carry no numbers: count from this one.',
            'bar:0',
          )
        : null,
    () => dropOver(bar(from), bar(from + quarter), bar(at), bar(at + 1), asked),
  );
}

/** Feed and millivoltmeter away from a part that is done with. */
function dropOff(part: PartKind, asked: Asked): GuideStep | null {
  const { feed } = asked.seen.drop;
  return feed !== null && partOf(feed[0]) !== part ? feedOff(asked) : null;
}

/** Feed on two places, millivoltmeter on two others, and a line. */
function dropOver(from: Place, to: Place, one: Place, other: Place, asked: Asked): GuideStep | null {
  const { feed } = asked.seen.drop;
  const because =
    'Under the same current the same copper drops the same: what differs from the rest is at fault.';
  return first(
    () => (feed !== null && (feed[0] !== from || feed[1] !== to) ? feedOff(asked) : null),
    () => (feed === null ? feedOn(from, to, asked) : null),
    () => probed('drop.1', one, asked, because),
    () => probed('drop.2', other, asked, because),
    () => writing('millivolt', 'Read the drop and write it down.', because),
  );
}

function feedOn(from: Place, to: Place, asked: Asked): GuideStep {
  const words = [from, to].map((place) => placeWords(asked.job.armature, asked.seen, place)).join(' and ');
  return (
    hungUp(['drop.1', 'drop.2'], asked) ??
    doing(
      { type: 'drop.feed', at: [from, to] },
      `Clamp the feed on ${words}.`,
      'Current in at one pair of contacts, drop read at another: the contacts themselves do not count.',
      'drop',
    )
  );
}

function feedOff(asked: Asked): GuideStep | null {
  if (asked.seen.drop.feed === null) return null;
  const handsFree = hungUp(['drop.1', 'drop.2'], asked);
  if (handsFree !== null) return handsFree;
  return doing(
    { type: 'drop.feed', at: null },
    'Take the feed off.',
    'It is moved on, or the test is over: a feed left on warms what it flows through.',
    'drop',
  );
}

function probed(lead: LeadId, place: Place, { seen, job }: Asked, because: string): GuideStep | null {
  const { at, touches } = seen.leads[lead];
  if (touches === place) return null;
  const words = placeWords(job.armature, seen, place);
  if (at !== 'hand') {
    const say = `Take the millivoltmeter’s ${lead === 'drop.1' ? 'first' : 'second'} lead: it goes on ${words}.`;
    return doing({ type: 'lead.take', lead, grip: 'handle' }, say, because, lead);
  }
  return doing({ type: 'lead.touch', lead, place }, `Put one of them on ${words}.`, because, place);
}

const COMMUTATOR: readonly Exclude<GaugeKind, 'brushLength'>[] = ['diameter', 'runOut', 'undercut'];
const GAUGE_REASONS: Readonly<Record<GaugeKind, string>> = {
  diameter: 'Below the card’s limit nothing more may be turned off: the part is scrap.',
  runOut: 'A commutator that does not run true throws its brushes off the bars.',
  undercut: 'Mica level with the bars lifts the brushes: then it is cut down.',
  brushLength: 'A short brush no longer has its spring behind it.',
};

/** Every gauge the parts of the job call for. */
export function gaugeWork(asked: Asked): GuideStep | null {
  const { parts } = asked.job;
  return first(
    ...(parts.includes('armature') ? COMMUTATOR : []).map((gauge) => () => commutator(gauge, asked)),
    ...BRUSHES.filter((brush) => parts.includes(partOfBrush(brush))).map(
      (brush) => () => brushLength(brush, asked),
    ),
  );
}

function commutator(gauge: Exclude<GaugeKind, 'brushLength'>, asked: Asked): GuideStep | null {
  if (asked.lines.some((line) => line.test === 'gauges' && line.gauge === gauge)) return null;
  if (asked.seen.gauge?.gauge === gauge) return measured(gauge);
  return (
    hungUp([...PANEL_LEADS, 'drop.1', 'drop.2', 'tester.1', 'tester.2'], asked) ??
    liftedOut(asked, 'The gauges need the commutator clear of the cradle.') ??
    doing({ type: 'gauge.read', gauge }, GAUGE_SAYS[gauge], GAUGE_REASONS[gauge], 'gauges')
  );
}
const GAUGE_SAYS: Readonly<Record<Exclude<GaugeKind, 'brushLength'>, string>> = {
  diameter: 'Measure the commutator’s diameter.',
  runOut: 'Measure how far the commutator runs out.',
  undercut: 'Measure how deep the mica lies below the bars.',
};

function brushLength(brush: BrushIndex, asked: Asked): GuideStep | null {
  const part = partOfBrush(brush);
  if (asked.lines.some((line) => line.gauge === 'brushLength' && line.brush === brush)) return null;
  if (asked.seen.gauge?.brush === brush) return measured('brushLength');
  return (
    hungUp([...PANEL_LEADS, 'drop.1', 'drop.2', 'tester.1', 'tester.2'], asked) ??
    powered('off', asked, 'Off whenever the bench is not in use.') ??
    (isMatPart(part) ? takenUp(part, asked) : null) ??
    doing(
      { type: 'gauge.read', gauge: 'brushLength', brush },
      `Measure ${BRUSH_WORDS[brush]!} of ${PART_WORDS[part]}.`,
      GAUGE_REASONS.brushLength,
      'gauges',
    )
  );
}

function measured(gauge: GaugeKind): GuideStep {
  return writing('gauges', 'Read the gauge and write it down.', GAUGE_REASONS[gauge]);
}
