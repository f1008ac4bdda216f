/** Settings read out in a row are judged line by line, and are no complaint about one of them. The sentences are our own. */
import { describe, expect, it } from 'vitest';
import { readsOut } from '../../bot/reading/index.js';
import { startWalk, tellText } from '../../bot/triage/index.js';
import { deps } from './console-walk.js';

const model = deps.triage();
const read = (text: string) => tellText(model, startWalk({ member: 'Wystan', helper: null }), text, 'member').read;
const settings = (text: string): string | undefined =>
  read(text).facts.find(({ what }) => what === 'port-settings')?.answer;
const weightOf = (text: string, fault: string): number =>
  read(text).suggested.find(({ faultId }) => faultId === fault)?.weight ?? 1;

// 9,600 baud, 8 data bits, no parity, 1 stop bit, no flow control as the usual setting of a hand controller: common practice, no source.
describe('settings read out', () => {
  it.each([
    ['port COM5, speed 9600, 8N1, no flow control', 'match'],
    ['COM7 9600 8 n 1 handshake none', 'match'],
    ['9600, 7E1, flow control off', 'other-frame'],
    ['COM4, 9600, 8N1, hardware flow control', 'flow-control'],
    ['9600 8n1 flow control is on', 'flow-control'],
    ['port COM5, speed 115200, 8N1, no flow control', undefined],
    ['port com5 speed 9600', 'match'],
  ])('“%s” is %s', (text, answer) => expect(settings(text)).toBe(answer));

  it('make an unusual speed suspect, and clear what is as usual', () => {
    const text = 'port COM5, speed 115200, 8N1, no flow control, timeout 2000';
    expect(weightOf(text, 'wrong-speed')).toBeGreaterThan(2);
    expect(weightOf(text, 'flow-control-on')).toBeLessThan(0.5);
    expect(weightOf('COM5, 9600, 8N1', 'wrong-speed')).toBeLessThan(0.5);
  });

  const check = model.check('settings-screen');
  const question = { id: 'settings-screen', answers: check?.answers ?? [], good: check?.good };
  it.each([
    ['port COM5, speed 115200, 8N1, no flow control, timeout 2000', true],
    ['COM4 and 9600', true],
    ['no idea, port com5 speed 9600', true],
    ['the speed is wrong, 115200 and not 9600', false],
    ['the port', false],
    ['it was at 19200, should be 9600', false],
    ['115200', false],
  ])('“%s” is a list: %s', (text, isList) => expect(readsOut(text, question)).toBe(isList));
});
