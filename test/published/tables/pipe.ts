import type { Source, Table } from '../figures/figure';
import { limitTable } from '../figures/limit-rows';
import { seriesTable } from '../figures/size-rows';

const THREADLIB: Source = {
  publisher: 'threadlib',
  edition: 'design tables of its repository (adrianschlatter/threadlib)',
  where: 'G, tabulated basic sizes and deviations of ISO 228-1',
};
const FASTENERS: Source = {
  publisher: 'FreeCAD Fasteners workbench',
  edition: 'FsData of its repository (shaise/FreeCAD_FastenersWB)',
  where: 'table of BSPP sizes',
};
const G_SIZES: Source = {
  publisher: 'FreeCAD project',
  edition: 'src/Mod/PartDesign/App/FeatureHole.cpp at commit 003e239dafdd',
  where: 'threadDescription, BSP, citing ISO 228-1',
};
const R_SIZES: Source = {
  publisher: 'FreeCAD project',
  edition: 'src/Mod/PartDesign/App/FeatureHole.cpp at commit 003e239dafdd',
  where: 'threadDescription, BSP, citing ISO 7-1',
};
const NPT_SIZES: Source = {
  publisher: 'FreeCAD project',
  edition: 'src/Mod/PartDesign/App/FeatureHole.cpp at commit 003e239dafdd',
  where: 'threadDescription, NPT, citing ASME B1.20.1',
};

/** Pipe threads: limits of ISO 228-1, and sizes by diameter and pitch, mm. */
export const PIPE: readonly Table[] = [
  limitTable(THREADLIB, [
    ['g:1/16', 'internal', '- 7.723 | 7.249 7.142 | 6.843 6.561'],
    ['g:1/16', 'A', '7.723 7.509 | 7.142 7.035'],
    ['g:1/16', 'B', '7.723 7.509 | 7.142 6.928'],
    ['g:1/8', 'internal', '- 9.728 | 9.254 9.147 | 8.848 8.566'],
    ['g:1/8', 'A', '9.728 9.514 | 9.147 9.040'],
    ['g:1/8', 'B', '9.728 9.514 | 9.147 8.933'],
    ['g:1/2', 'internal', '- 20.955 | 19.935 19.793 | 19.172 18.631'],
    ['g:1/2', 'A', '20.955 20.671 | 19.793 19.651'],
    ['g:1/2', 'B', '20.955 20.671 | 19.793 19.509'],
    ['g:3/4', 'internal', '- 26.441 | 25.421 25.279 | 24.658 24.117'],
    ['g:3/4', 'A', '26.441 26.157 | 25.279 25.137'],
    ['g:3/4', 'B', '26.441 26.157 | 25.279 24.995'],
    ['g:7/8', 'internal', '- 30.201 | 29.181 29.039 | 28.418 27.877'],
    ['g:7/8', 'A', '30.201 29.917 | 29.039 28.897'],
    ['g:7/8', 'B', '30.201 29.917 | 29.039 28.755'],
    ['g:1-3/4', 'internal', '- 53.746 | 52.447 52.267 | 51.428 50.788'],
    ['g:1-3/4', 'A', '53.746 53.386 | 52.267 52.087'],
    ['g:1-3/4', 'B', '53.746 53.386 | 52.267 51.907'],
    ['g:2', 'internal', '- 59.614 | 58.315 58.135 | 57.296 56.656'],
    ['g:2', 'A', '59.614 59.254 | 58.135 57.955'],
    ['g:2', 'B', '59.614 59.254 | 58.135 57.775'],
    ['g:2-1/4', 'internal', '- 65.710 | 64.448 64.231 | 63.392 62.752'],
    ['g:2-1/4', 'A', '65.710 65.276 | 64.231 64.014'],
    ['g:2-1/4', 'B', '65.710 65.276 | 64.231 63.797'],
    ['g:5-1/2', 'internal', '- 151.130 | 149.868 149.651 | 148.812 148.172'],
    ['g:5-1/2', 'A', '151.130 150.696 | 149.651 149.434'],
    ['g:5-1/2', 'B', '151.130 150.696 | 149.651 149.217'],
  ]),
  seriesTable(FASTENERS, 'g', [
    ['G 1/16', '7.723', '0.907'],
    ['G 1/4', '13.157', '1.337'],
    ['G 1/2', '20.955', '1.814'],
    ['G 3/4', '26.441', '1.814'],
    ['G 1', '33.249', '2.309'],
    ['G 1 1/4', '41.910', '2.309'],
    ['G 1 1/2', '47.803', '2.309'],
    ['G 2', '59.614', '2.309'],
    ['G 2 1/2', '75.184', '2.309'],
    ['G 3', '87.884', '2.309'],
    ['G 4', '113.030', '2.309'],
    ['G 5', '138.430', '2.309'],
    ['G 6', '163.830', '2.309'],
  ]),
  seriesTable(G_SIZES, 'g', [['G 1 3/4', '53.743', '2.309']]),
  seriesTable(R_SIZES, 'r', [
    ['R 1/16', '7.723', '0.907'],
    ['R 1/8', '9.728', '0.907'],
    ['R 1/4', '13.157', '1.337'],
    ['R 3/8', '16.662', '1.337'],
    ['R 1/2', '20.955', '1.814'],
    ['R 3/4', '26.441', '1.814'],
    ['R 1', '33.249', '2.309'],
    ['R 1 1/4', '41.910', '2.309'],
    ['R 1 1/2', '47.803', '2.309'],
    ['R 2', '59.614', '2.309'],
    ['R 3', '87.884', '2.309'],
    ['R 4', '113.030', '2.309'],
    ['R 6', '163.830', '2.309'],
  ]),
  seriesTable(NPT_SIZES, 'npt', [
    ['1/16', '7.938', '0.941'],
    ['1/8', '10.287', '0.941'],
    ['1/4', '13.716', '1.411'],
    ['1/2', '21.336', '1.814'],
    ['3/4', '26.670', '1.814'],
    ['1', '33.401', '2.209'],
    ['1 1/2', '48.260', '2.209'],
    ['2', '60.325', '2.209'],
    ['2 1/2', '73.025', '3.175'],
    ['3 1/2', '101.600', '3.175'],
    ['4', '114.300', '3.175'],
    ['5', '141.300', '3.175'],
    ['8', '219.075', '3.175'],
    ['10', '273.050', '3.175'],
    ['12', '323.850', '3.175'],
  ]),
];
