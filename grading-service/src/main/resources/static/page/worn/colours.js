// Colours of what is worn: outside and inside of each piece, and the body.

export const CLOTH = { "overlay-main": { out: 0x8fb6cf, in: 0xb9604f }, "under-sleeve": { out: 0xe9dcb8, in: 0xcbb98c }, "base-sleeve": { out: 0xe9dcb8, in: 0xcbb98c } };
export const SKIN = 0xd9b99b;
export const TRUNK = 0xcfc6b4;
