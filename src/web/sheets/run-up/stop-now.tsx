/** Stands over everything while the engine must not run. */
export function StopNow({ stops }: { stops: readonly string[] }) {
  if (stops.length === 0) return null;
  return (
    <div className="stop-now" role="alert">
      <b>Stop the engine now</b>
      <ul>
        {stops.map((why) => (
          <li key={why}>{why}</li>
        ))}
      </ul>
      <p>
        Stop control first; if it does not answer: choke shut, fuel tap off, lead off with an insulated tool.
        Put it right before the next start.
      </p>
    </div>
  );
}
