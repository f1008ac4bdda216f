/** When it fails: a happening of any kind and the loss of the link, in either order, in one sentence or in two. Invented; no source. */
import { describe, expect, it } from 'vitest';
import { amiss, everyWay, spread } from './make.js';

const LOSSES = [
  'the link drops',
  'it loses the connection',
  'the mount goes offline',
  'the connection is gone',
  'the port disappears',
  'the program loses the mount',
  'I get a timeout',
  'it stops responding',
  'there is no link any more',
  'the mount does not answer',
];
const LOST = ['Link gone.', 'Connection lost.', 'No answer.', 'Dead.', 'Poof, offline.', 'Disconnected again.'];

/** `clause`: after "when"; `done`: told as an event; `with`: after a word of time or by itself. */
interface Happening {
  readonly clause: readonly string[];
  readonly done?: readonly string[];
  readonly with: readonly string[];
}

const HAPPENINGS: Readonly<Record<string, Happening>> = {
  weather: {
    clause: [
      'it gets damp',
      'it rains',
      'dew falls',
      'there is frost',
      'the temperature falls below zero',
      'fog comes in',
    ],
    with: [
      'on cold nights',
      'in damp air',
      'on foggy evenings',
      'in the rain',
      'on wet mornings',
      'on freezing nights',
    ],
  },
  'after-sleep': {
    clause: [
      'the laptop sleeps',
      'the screen goes dark',
      'I close the lid',
      'the computer wakes up',
      'the pc dozes off',
    ],
    done: ['The laptop went to sleep.', 'I closed the lid.', 'The PC dozed off.', 'The screensaver came on.'],
    with: ['after standby', 'after waking the laptop', 'after closing the lid'],
  },
  motors: {
    clause: [
      'I slew',
      'both motors run',
      'I press an arrow key',
      'the mount starts to move',
      'I hit goto',
      'it makes a long move',
    ],
    done: ['I pressed goto.', 'The mount started to slew.', 'Sent it to a star.', 'Both motors spun up.'],
    with: ['during a slew', 'on long gotos', 'at full speed', 'during a meridian flip'],
  },
  touched: {
    clause: [
      'I touch the cable',
      'someone trips over the lead',
      'I nudge the plug',
      'I lean on the tripod',
      'I wiggle the connector',
    ],
    done: ['I bumped the plug.', 'My son kicked the cable.', 'I brushed the usb lead.'],
    with: ['after a knock on the plug', 'with a tug at the cord'],
  },
  place: {
    clause: [
      'it crosses the meridian',
      'the tube is vertical',
      'it points west',
      'the scope looks straight up',
      'it is near the horizon',
    ],
    done: ['It crossed the meridian.', 'Pointed it at the zenith.', 'Swung it to the east.'],
    with: ['near the zenith', 'past the meridian', 'low down in the south', 'at certain positions'],
  },
  device: {
    clause: [
      'the camera starts',
      'the dew heater cuts in',
      'I plug in the focuser',
      'I switch on the cooler',
      'an image downloads',
    ],
    done: ['I plugged in the camera.', 'The cooler kicked in.', 'Turned on the dew heaters.'],
    with: ['with the camera on', 'with the focuser plugged in', 'during downloads of the camera'],
  },
  minutes: {
    clause: [],
    done: ['It ran for half an hour.', 'Good for about twenty minutes.'],
    with: ['after ten minutes', 'after half an hour', 'every twenty minutes', 'an hour in', 'a couple of hours later'],
  },
  quiet: {
    clause: ['nobody uses it', 'I leave it alone', 'it sits idle', 'I do not send anything'],
    done: ['Left it alone for a bit.', 'Let it sit idle.'],
    with: ['after sitting idle'],
  },
  hour: {
    clause: ['it is around midnight'],
    with: [
      'at midnight',
      'around 2 in the morning',
      'at 23:00',
      'near 4 am',
      'always at 11 pm',
      'at the same time every night',
    ],
  },
};

const madeOf = ({ clause, done = [], with: led }: Happening): readonly string[] => [
  ...everyWay(
    [
      'when {clause} {loss}',
      'whenever {clause}, {loss}',
      '{loss} as soon as {clause}',
      '{loss} every time {clause}',
      'all fine, but once {clause} {loss}',
      'if {clause} {loss}',
      '{loss} only when {clause}',
      'no trouble all evening, then {clause} and {loss}',
    ],
    { clause, loss: LOSSES },
  ),
  ...everyWay(['{led} {loss}', '{loss} {led}', 'always {led}: {loss}'], { led, loss: LOSSES }),
  ...everyWay(['{done} {lost}', 'Connected. {done} {lost}', '{done} Then {loss}.'], { done, lost: LOST, loss: LOSSES }),
];

const ANY = 'when-drops';

describe('a happening beside the loss of the link tells when it fails', () => {
  it.each(Object.entries(HAPPENINGS))('%s', (answer, happening) => {
    const texts = madeOf(happening);
    expect(texts.length).toBeGreaterThan(60);
    // In several sentences, those that no member's resemble are no fact.
    expect(amiss(texts, { read: [`${ANY}.${answer}`] }).length / texts.length).toBeLessThan(0.2);
  });
});

describe('no such thing is read', () => {
  const { weather, motors, touched, device } = HAPPENINGS as Record<string, Happening>;
  const clause = [weather, motors, touched, device].flatMap((one) => one?.clause ?? []);
  it('where the loss is denied', () => {
    const texts = everyWay(
      [
        'it never drops when {clause}',
        'the link does not drop if {clause}',
        'when {clause} the connection never drops',
      ],
      { clause },
    );
    expect(amiss(texts, { not: [ANY] })).toEqual([]);
  });
  it('where it is asked', () => {
    const texts = everyWay(
      ['will it drop when {clause}?', 'does the link drop if {clause}?', 'is it bad for the connection when {clause}?'],
      { clause },
    );
    expect(amiss(texts, { not: [ANY] })).toEqual([]);
  });
  it('where no loss is told', () => {
    const texts = everyWay(
      ['all is fine when {clause}', 'it works well whenever {clause}', 'I like it when {clause}'],
      {
        clause: clause.filter((one) => !one.includes('sleep')),
      },
    );
    expect(amiss(texts, { not: [ANY] })).toEqual([]);
  });
  it('where another device is lost', () => {
    const texts = everyWay(['when {clause} the camera disconnects', 'the guider drops out as soon as {clause}'], {
      clause: motors?.clause ?? [],
    });
    expect(amiss(texts, { not: [ANY] })).toEqual([]);
  });
});

describe('of a good half and a bad half', () => {
  const KINDS = Object.entries(HAPPENINGS).filter(([, { clause }]) => clause.length > 1);
  it('the bad one tells when', () => {
    let [wrong, all] = [0, 0];
    for (const [good, { clause: fine }] of KINDS)
      for (const [bad, { clause }] of KINDS) {
        if (good === bad) continue;
        const texts = spread(
          everyWay(
            ['it never drops when {fine}, only when {clause}', 'when {fine} no trouble, when {clause} it drops'],
            {
              fine,
              clause,
            },
          ),
          6,
        );
        expect(amiss(texts, { not: [`${ANY}.${good}`] })).toEqual([]);
        wrong += amiss(texts, { read: [`${ANY}.${bad}`] }).length;
        all += texts.length;
      }
    expect(wrong / all).toBeLessThan(0.1);
  });
});
