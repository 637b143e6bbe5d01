import { Component, type ReactNode } from 'react';
import { Link } from 'wouter';
import { api } from '../data/api.js';
import { fetchAgain, NotFetched } from '../later.js';
import { Button } from '../parts/act.js';

const isBenchThere = (): Promise<boolean> =>
  api.health().then(
    () => true,
    () => false,
  );

interface Props {
  /** "This sheet", "The log" */
  readonly what: string;
  /** another one of these is another try */
  readonly of: string;
  readonly children: ReactNode;
}

/** An error costs what stands inside this and nothing else: it says so, and gives a way on. */
export class OnlyThis extends Component<Props, { error?: Error; of: string }> {
  override state: { error?: Error; of: string } = { of: this.props.of };

  static getDerivedStateFromError(error: unknown) {
    return { error: error instanceof Error ? error : new Error(String(error)) };
  }

  static getDerivedStateFromProps({ of }: Props, state: { of: string }) {
    return state.of === of ? null : { of, error: undefined };
  }

  override componentDidMount() {
    window.addEventListener('online', this.again);
  }

  override componentWillUnmount() {
    window.removeEventListener('online', this.again);
  }

  readonly again = () => {
    const { error } = this.state;
    if (!error) return;
    void fetchAgain().then(async () => {
      // a browser may remember that a part did not come and never ask for it again: only a new page does then
      if (error instanceof NotFetched && !error.hasComeSince() && (await isBenchThere())) location.reload();
      else this.setState({ error: undefined } as never);
    });
  };

  override render() {
    const { error } = this.state;
    if (!error) return this.props.children;
    return (
      <section className="wrong-box stack tight" role="alert">
        <b>{this.props.what} cannot be shown now.</b>
        <p>
          {error instanceof NotFetched
            ? 'It has not reached this device: the network broke off while it was fetched. It is fetched again by itself when the network is back.'
            : `Something in it went wrong (${error.message}).`}{' '}
          Nothing is lost: what was written down stands, and what was typed is kept.
        </p>
        <div className="row">
          <Button look="go" onClick={this.again}>
            Try again
          </Button>
          <Button onClick={() => location.reload()}>Load the page anew</Button>
          <Link className="button" href="/">
            To the bench
          </Link>
        </div>
      </section>
    );
  }
}
