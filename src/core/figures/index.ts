export * from './why';
export * from './standing';
export * from './ids';
export * from './limit';
export * from './verdict';
export * from './evidence';
export { type Figure, type Sheet } from './define';
export { classOf } from './thread';
export { figuresFor, REGISTRY } from './registry';
