import type { Source, Table } from '../figures/figure';
import { limitTable } from '../figures/limit-rows';
import { trapezoidalTable } from '../figures/size-rows';

const ENGINEERS_EDGE: Source = {
  publisher: 'Engineers Edge',
  edition: 'web table "External ISO metric trapezoidal threads, Tr 8 to Tr 315"',
  where: 'class 7e',
};
const ROYMECH: Source = {
  publisher: 'RoyMech',
  edition: 'web page "Trapezoidal screw threads"',
  where: 'table after ISO 2904:1977',
};
const DEPENDABLE: Source = {
  publisher: 'Dependable Acme',
  edition: 'web page "External thread dimensions"',
  where: 'class 2G',
};
const MERRICK: Source = {
  publisher: 'L. Merrick',
  edition: '"Acme Thread Data Sheets", 2009',
  where: 'root diameter limits',
};

/** Leadscrew threads: trapezoidal in mm, Acme in inches. */
export const POWER: readonly Table[] = [
  limitTable(ENGINEERS_EDGE, [
    ['tr:Tr8x1.5', '7e', '8.000 7.850 | 7.183 7.013 | 6.200 5.921'],
    ['tr:Tr10x1.5', '7e', '10.000 9.850 | 9.183 9.013 | 8.200 7.921'],
    ['tr:Tr10x2', '7e', '10.000 9.820 | 8.929 8.739 | 7.500 7.191'],
    ['tr:Tr12x2', '7e', '12.000 11.820 | 10.929 10.729 | 9.500 9.179'],
    ['tr:Tr12x3', '7e', '12.000 11.764 | 10.415 10.191 | 8.500 8.135'],
    ['tr:Tr14x2', '7e', '14.000 13.820 | 12.929 12.729 | 11.500 11.179'],
    ['tr:Tr16x4', '7e', '16.000 15.700 | 13.905 13.640 | 11.500 11.074'],
  ]),
  trapezoidalTable(ROYMECH, [
    ['tr:Tr8x1.5', '7.25', '8.30', '6.20', '6.50'],
    ['tr:Tr9x1.5', '8.25', '9.30', '7.20', '7.50'],
    ['tr:Tr9x2', '8.00', '9.50', '-', '7.00'],
    ['tr:Tr10x1.5', '9.25', '-', '-', '-'],
    ['tr:Tr10x2', '9.00', '10.50', '7.50', '8.00'],
    ['tr:Tr11x2', '10.00', '11.50', '8.50', '9.00'],
    ['tr:Tr11x3', '9.50', '11.50', '7.50', '8.00'],
    ['tr:Tr12x2', '11.00', '12.50', '9.50', '10.00'],
    ['tr:Tr12x3', '10.50', '12.50', '8.50', '9.00'],
    ['tr:Tr14x2', '13.00', '14.50', '11.50', '12.00'],
    ['tr:Tr14x3', '12.50', '14.50', '10.50', '11.00'],
    ['tr:Tr16x2', '15.00', '16.50', '13.50', '14.00'],
    ['tr:Tr42x3', '40.50', '42.50', '38.50', '39.00'],
    ['tr:Tr42x7', '38.50', '43.00', '34.00', '35.00'],
    ['tr:Tr42x10', '37.00', '43.00', '-', '32.00'],
    ['tr:Tr44x3', '42.50', '44.50', '40.50', '41.00'],
    ['tr:Tr44x7', '40.50', '45.00', '36.00', '37.00'],
    ['tr:Tr44x12', '38.00', '45.00', '31.00', '32.00'],
    ['tr:Tr46x3', '44.50', '46.50', '42.50', '43.00'],
    ['tr:Tr46x8', '42.00', '47.00', '37.00', '38.00'],
    ['tr:Tr46x12', '40.00', '47.00', '33.00', '34.00'],
    ['tr:Tr48x3', '46.50', '48.50', '44.50', '45.00'],
    ['tr:Tr48x8', '44.00', '49.00', '39.00', '40.00'],
  ]),
  limitTable(DEPENDABLE, [
    ['acme:3/8-12', 'screw-2G', '0.3750 0.3700 | 0.3284 0.3161 | 0.2817 0.2632'],
    ['acme:3/4-6', 'screw-2G', '0.7500 0.7417 | 0.6598 0.6424 | 0.5633 0.5371'],
    ['acme:7/8-6', 'screw-2G', '0.8750 0.8667 | 0.7842 0.7663 | 0.6883 0.6615'],
    ['acme:1-1/8-5', 'screw-2G', '1.1250 1.1150 | 1.0165 0.9967 | 0.9050 0.8753'],
  ]),
  limitTable(MERRICK, [
    ['acme:1/4-16', 'screw-2G', '- - | - - | - 0.1618'],
    ['acme:1/4-16', 'screw-3G', '- - | - - | - 0.1702'],
    ['acme:1/4-16', 'screw-4G', '- - | - - | - 0.1722'],
    ['acme:1/4-16', 'nut-2G', '- - | - - | 0.1925 -'],
    ['acme:5/16-14', 'screw-2G', '- - | - - | - 0.2140'],
    ['acme:5/16-14', 'screw-3G', '- - | - - | - 0.2231'],
    ['acme:5/16-14', 'screw-4G', '- - | - - | - 0.2254'],
    ['acme:5/16-14', 'nut-2G', '- - | - - | 0.2461 -'],
    ['acme:7/16-12', 'screw-2G', '- - | - - | - 0.3253'],
    ['acme:7/16-12', 'screw-3G', '- - | - - | - 0.3354'],
    ['acme:7/16-12', 'screw-4G', '- - | - - | - 0.3379'],
    ['acme:7/16-12', 'nut-2G', '- - | - - | 0.3592 -'],
  ]),
];
