import type { ReactNode } from 'react';
import { DeviceSwitches, SavedState, ShopNav } from './top.js';

/** The frame of the shop's own pages: bench, reference desk, shop. */
export function Page({ title, children }: { title: string; children: ReactNode }) {
  return (
    <div className="page">
      <a className="button skip" href="#body">
        Skip to the page
      </a>
      <header className="top">
        <ShopNav />
        <div className="right">
          <SavedState />
          <DeviceSwitches />
        </div>
      </header>
      <main className="body stack" id="body">
        <h1>{title}</h1>
        {children}
      </main>
    </div>
  );
}
