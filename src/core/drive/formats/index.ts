export * from './format';
export * from './binary';
export * from './running-sum';
export * from './hold';
export * from './error';
export * from './ends';
export * from './need';
export * from './scale';
