/** The cautions that stand wherever the work could hurt someone. */
export function Cautions() {
  return (
    <ul class="cautions">
      <li>
        <strong>Mains-voltage test leads can kill.</strong> A series lamp passes far more current than a body
        can bear.
      </li>
      <li>
        Many workplaces no longer allow a series lamp; a low-energy tester replaces it. Follow the rules of
        the site, local electrical-safety law and the bench maker’s instructions.
      </li>
      <li>The simulator teaches the work. It does not qualify anyone to do it.</li>
    </ul>
  );
}

/** What the figures are and are not. */
export function FiguresNote() {
  return (
    <p class="figures-note">
      Figures are computed for an invented bench and were not compared with a real one. This record is not a
      qualification.
    </p>
  );
}
