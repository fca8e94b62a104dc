/** What a vehicle stands on: axle groups, wheelsets by calliper, what hangs low. Each field once. */
import { day, group, may, must, rows, text, yes } from '../describe.ts';
import { figure, quantity } from '../schema/quantity.ts';

export const along = () => figure('length', 0, 30);

export const axleGroup = group({
  name: must(text(), 'name', 'Front {truck}, rear {truck}, drivers …'),
  at: must(along(), 'at', 'Its middle from the front end; for a {truck}, its pivot.'),
  axles: may(figure('count', 1, 8), 'axles', 'How many axles it has.', { assumed: 'axles' }),
  wheelBase: may(
    figure('length', 0, 10),
    'wheel base',
    'Between its outer axles; 0 for a single axle. Must stand where a vehicle rests on one group of several axles alone.',
  ),
  middlePlay: may(
    figure('length', 0, 0.2),
    'play of middle axles',
    'How far an axle between the outer ones moves sideways in the frame, from the middle to one side; of wheels without flanges, how far they may stand aside and still lie on the rail.',
    { asked: 'how far the axles between the outer ones move sideways in the frame, to one side' },
  ),
  travel: may(
    figure('length', 0, 0.2),
    'travel of its axles',
    'How far one axle rises or falls from the line of the others and still bears: slide a feeler or a strip under one wheel until it is free to turn, less under the others nothing. Of a rigid frame 0.',
    {
      asked:
        'how far one axle of the group rises or falls in the frame and still bears: strips under its wheels until the next ones turn free',
    },
  ),
  wheelRadius: may(figure('length', 0.01, 1), 'wheel radius', 'On the tread; the flange does not count.', {
    asked: 'the radius of its wheels on the tread: half their diameter, the flange not counted',
  }),
  driven: may(yes(), 'driven', 'The engine drives it.'),
  tareShare: may(
    figure('ratio', 0.001, 1),
    'tare share',
    'Share of the tare that stands on it, by scales under each group; needed where there are more than two.',
    { asked: 'the weight under each axle group, by scales' },
  ),
});

const wearReading = group({
  date: must(day(), 'date', 'The day of the reading.'),
  flangeThickness: may(
    figure('length', 0.0005, 0.05),
    'flange thickness',
    'The thinner of the two, measured where it always is.',
  ),
  flangeHeight: may(figure('length', 0.0005, 0.05), 'flange height', 'The deeper of the two.'),
  hollow: may(figure('length', 0, 0.05), 'hollow of the tread', 'The deeper of the two.'),
});

export const wheelset = group({
  name: must(text(), 'name', 'Which axle: front {truck}, leading axle …'),
  backToBack: may(
    rows(figure('length', 0.03, 1), 1, 12),
    'back to back',
    'Between the inner faces of its two wheels, by inside calliper level with the axle, at three or four places: roll it on a quarter turn each time. In a form, with commas between.',
    {
      asked:
        'between the backs of the two wheels, by inside calliper level with the axle, at three or four places round them',
    },
  ),
  flangeThickness: may(
    quantity('length', 0.0005, 0.05),
    'flange thickness',
    'From the back of the wheel to the front of the flange, by calliper where it meets the rail’s side; thinnest and thickest as bounds.',
    { asked: 'the thickness of each flange, by calliper where it meets the side of the rail' },
  ),
  flangeHeight: may(
    figure('length', 0.0005, 0.05),
    'flange height',
    'From the tread to the tip of the flange, by depth gauge; the deeper of the two, hollow treads included.',
    { asked: 'how far the flange stands out beyond the tread, by depth gauge' },
  ),
  hollow: may(
    figure('length', 0, 0.05),
    'hollow of the tread',
    'How deep the tread is worn: a straight edge along it, from the fillet of the flange to the outer edge, and a feeler under it; the deeper of the two.',
    { asked: 'how deep the tread is worn hollow, by straight edge and feeler' },
  ),
  taper: may(
    figure('angle', 0, 0.35),
    'taper of the tread',
    'How far the tread falls toward its outer edge: by template or protractor; 1 in 20 is 2.9°.',
    { asked: 'how far the tread falls toward its outer edge, by template or protractor' },
  ),
  wear: may(
    rows(wearReading, 0, 200),
    'wear',
    'What was read on other days, day by day: how fast it wears, and when it will reach a limit. The latest counts beside the figures above, whichever is more worn.',
  ),
  diameters: may(
    rows(figure('length', 0.02, 2), 2, 2),
    'diameters',
    'Of its two wheels on the tread, by large calliper or a tape round them ÷ 3.1416. In a form, with a comma between.',
    { asked: 'the diameters of both wheels, on the tread' },
  ),
  width: may(
    figure('length', 0.002, 0.2),
    'width',
    'Of one wheel from its back to its outer face; the narrower of the two.',
    { asked: 'how wide the narrower wheel is, from its back to its outer face' },
  ),
});

export const lowPart = group({
  name: must(text(), 'name', 'Ash pan, truck frame, brake beam, pilot, step …'),
  at: must(along(), 'at', 'Its lowest point from the front end.'),
  height: must(
    figure('length', -0.1, 1),
    'height',
    'Above the top of the rail, empty, by rule from a straight edge laid across both rails.',
  ),
});
