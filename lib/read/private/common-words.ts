import { wordsOf } from './words.ts';

/**
 * Everyday words that notes of a job hold and that are names of people too (mem): where one stands in a text by itself, it
 * tells of nobody.
 */
export const commonWords: ReadonlySet<string> = new Set(
  wordsOf(`
about above after again along also always amber arms arrow away back ball band bank base bass bench best
black blue board bond book both boulder branch bridge bright brook brown brush call camp carrier case
cave center chance change channel check clean clear clerk close coal coin cold come copper corner cotton
court cover craft cross crown current dark dash dawn deal deep door down drive driver drop dust each
early earth east edge even ever every face fair faith fall feed fell field file fine fire fish five flag
flat flint flower flowers foot foreman four frame free fresh from front frost gain gate glass gold good
green grey ground guard hall hammer hand hands hard have head heart high hole holiday home hook horn
house into iron joint just justice keen keep kind knife know lamb land lane large last left less level
light like line links live load lock long look loop lower made main make maker many mark marks master
mate mays middle mill mint moon moor more most much must nail nest never newly next night none note only
open order outer over page park part parts pass patch peace pepper pilot pine pitch place plain plant
play point pole pond pool poor post power press price proper pure quick rain read rear rest rich ridge
right ring rise road rock round rule safe same sand sell service seven shade sharp shaw shed shell ship
shoe shop shore short side signal single slate slow small smart snow some sound south spare spark
speaker spring square stable staff stand steel still stock stop street string strong summer sweet swift
table than that them then there they thick thin this timber time torn town track trade train tree true
trunk turn twin under unit upper very view wait walk wall warm watch water waters weeks well what wheat
wheel when white wide wild will wills wind winter wire wise with within wood work worth yard year young
your
`),
);
