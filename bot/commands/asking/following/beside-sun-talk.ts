/** What is said after a warning of the Sun and comes near no eye: "ok got it", "whats the time", "the usb cable". Pure; anything else may be of it. */

const LEAD =
  '(?:(?:ok|okay|k|kk|ah|oh|aha|right|sure|fine|yes|yeah|yep|no|nope|ha|haha|well|alright|good|great|cool|and|so|btw|hey|pls|please|nvm|never mind|lol) )*';
const END = '(?: (?:then|thanks|thank you|thx|cheers|mate|now|here|pls|please|promise|at all|sorry))*';
const all = (inner: string): RegExp => new RegExp(`^${LEAD}(?:${inner})${END}$`, 'u');

const HARMLESS: readonly RegExp[] = [
  all(
    'ok|okay|phew|oh dear|oh no|blimey|crikey|(?:phew |so )*(?:glad|good thing) i asked|(?:sorry )?wrong (?:chat|channel|group)|(?:i ?m|i am|im) not (?:stupid|daft|an idiot|that (?:stupid|daft))|(?:i ?ll|i will|ill|lets|i d rather|better) (?:leave|skip|drop|forget) (?:it|that)(?: alone)?|leave it|too risky|lol|haha?|wow|ouch|yikes|got it|gotcha|good to know|understood|i understand|i see|makes sense|fair enough|will do|noted|clear|never ?mind|nvm|forget it|my bad|thats clear|that is clear|didnt know(?: that)?',
  ),
  all(
    '(?:dont worry )?(?:i|we) (?:wont|won t|will not|m not going to|am not going to|would never|never will|wouldnt|wouldn t|better not)(?: (?:look|look at it|look in|do it|do that|do so|try|try it|risk it|point at it))?',
  ),
  all(
    '(?:hey )?(?:what ?s?|whats|what is|tell me|do you (?:know|have)) (?:the |local )*(?:time|hour)(?: (?:is it|it is|there))?|what time (?:is it|s it|do you have)|time(?: now)?',
  ),
  /^(?:.* )?(?:where|which shops?|who) .*\b(?:buy|order|sells?|bought)\b.*$|^.*\bhow much (?:is|are|does|do|for|would)\b.*$|^.*\b(?:what (?:does|do|would) .* cost|the price|how expensive)\b.*$/u,
  /^(?:will|would|can|do) (?:i|we) (?:get|have|receive) (?:it|one|them)(?: here| delivered)? (?:before then|by then|in time|till then|until then)$/u,
  all(
    '(?:it s|its|it is|here it s|here its)(?: (?:already|now|still))* (?:night|midnight|dark (?:here|now|already|outside)|raining|snowing|dark)(?: (?:here|now|already|outside|anyway))*',
  ),
  all(
    '(?:vale|va bene|ok|okay|alles klar|gut|d accord|super|perfecto|perfetto|spoko|dobra)?(?: (?:verstanden|danke(?: schon)?|gracias|grazie|merci|bedankt|dank je|dzieki|obrigad[oa]|capito|entendido|compris|begrepen|zrozumiano))+|(?:verstanden|capito|entendido|compris|begrepen)',
  ),
  /^(?:ok |so |and )*what can (?:i|we) do (?:today|now|instead|then|tonight)(?: (?:instead|then))?$/u,
  /^(?:do you know (?:any |a )?jokes?|tell me a joke|who (?:made|wrote|built|are) you|what are you|where are you(?: based| from)?|are you (?:a bot|human|real|ai|an ai))\b.*$/u,
];

const OF_GEAR =
  /\b(?:dew|heater|focus(?:s)?er|greas\w*|dovetail|screws?|counter ?weights?|brackets?|clutch\w*|legs?|collimat\w*|usb|cables?|com ?ports?|ports?|drivers?|laptop|firmware|hand ?set|hand ?controller|batter(?:y|ies)|charger|wi ?fi|bluetooth|balanc\w*|tripod|serial|adapter|software|app)\b/u;
const CAMERA_LOST =
  /\b(?:camera|webcam)\b.*\b(?:not found|not detected|isn ?t found|not (?:seen|recogni[sz]ed)|won ?t (?:connect|start)|disconnect\w*)\b/u;
/** Anything that looks, points or holds light back: it may be of the Sun still. */
const MAY_BE_SUN =
  /\b(?:sun\w*|solar|filt\w*|eyes?|look\w*|see|seeing|watch\w*|view\w*|point\w*|aim\w*|glass\w*|glasses|peek|glance|project\w*|safe\w*|eclips\w*|window|burn\w*|hot|melt\w*|smok\w*|photo\w*|picture\w*|shoot\w*|film\w*|imag\w*|finder\w*|eye ?piece\w*)\b/u;

/** @param plain folded, see plainHarm */
export const isBesideSunTalk = (plain: string): boolean =>
  HARMLESS.some((form) => form.test(plain)) ||
  ((OF_GEAR.test(plain) || CAMERA_LOST.test(plain)) && !MAY_BE_SUN.test(plain));
