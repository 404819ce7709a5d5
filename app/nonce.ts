import { createContext, useContext } from 'react';

/** The nonce of this response's scripts; known on the server only (browsers hide it afterwards). */
export const NonceContext = createContext<string | undefined>(undefined);
export const useNonce = (): string | undefined => useContext(NonceContext);
