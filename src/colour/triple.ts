/** Three numbers of a colour space: XYZ, Lab, or linear RGB. The name that holds one says which, and with which white. */
export type Triple = readonly [number, number, number];
