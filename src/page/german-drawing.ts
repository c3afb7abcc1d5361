// What findings about the drawing and its passes mean, in German: what it is, and what to do.

/** By code. */
export const GERMAN_DRAWING = {
  'source/malformed': [
    'Die Datei ist kein wohlgeformtes XML.',
    'An der gezeigten Stelle ausbessern oder neu aus dem Zeichenprogramm speichern.',
  ],
  'source/encoding-unknown': [
    'Die Datei nennt eine Zeichenkodierung, die hier nicht gelesen wird.',
    'Als UTF-8 speichern.',
  ],
  'source/encoding-broken': [
    'Die Bytes passen nicht zur angegebenen Zeichenkodierung.',
    'Neu als UTF-8 speichern; womöglich wurde die Datei beim Übertragen beschädigt.',
  ],
  'source/gzip-broken': ['Die gepackte Datei ist beschädigt oder abgeschnitten.', 'Die Datei noch einmal holen.'],
  'source/not-svg': ['Das ist keine SVG-Zeichnung.', 'Als SVG speichern und diese Datei nehmen.'],
  'source/entity-refused': [
    'Eine Entität der Datei ist verschachtelt oder liegt außerhalb.',
    'Ohne solche Entitäten speichern.',
  ],
  'source/namespace-missing': [
    'Der Wurzel fehlt der Namensraum von SVG; die gemachten Dateien bekommen ihn.',
    'Nichts, sofern die Zeichnung richtig aussieht.',
  ],
  'source/doctype-removed': ['Der Dokumenttyp bleibt weg; seine Entitäten sind ausgeschrieben.', ''],
  'source/transcoded': ['Die Datei war nicht in UTF-8; die gemachten Dateien sind es.', ''],
  'limit/bytes': ['Die Datei ist größer als erlaubt.', 'Die Datei verkleinern, etwa um eingebettete Bilder.'],
  'limit/unpacked-bytes': ['Die entpackte Datei ist größer als erlaubt.', 'Die Datei verkleinern.'],
  'limit/depth': ['Elemente sind tiefer verschachtelt als erlaubt.', 'Gruppen auflösen.'],
  'limit/elements': ['Die Zeichnung hat mehr Elemente als erlaubt.', 'Teilen oder vereinfachen.'],
  'limit/attributes': ['Ein Element hat mehr Attribute als erlaubt.', 'Die Zeichnung neu speichern.'],
  'limit/entity-count': ['Es sind mehr Entitäten vereinbart als erlaubt.', 'Ohne Entitäten speichern.'],
  'limit/entity-length': ['Eine Entität ist länger als erlaubt.', 'Ohne Entitäten speichern.'],
  'limit/entity-total': ['Die Entitäten ergeben mehr Text als erlaubt.', 'Ohne Entitäten speichern.'],
  'limit/references': [
    'Verweise (use) zeichnen mehr Kopien als erlaubt.',
    'Kopien in der Zeichnung verringern; Nutzen auf dem Bogen macht diese Seite selbst.',
  ],
  'limit/selectors': ['Die Stilvorlagen haben mehr Selektoren als erlaubt.', 'Stile vereinfachen.'],
  'resolve/size-unsure': [
    'Die Größe steht in px oder ohne Einheit da und ist darum nicht sicher.',
    'Unter „Marken und Größe“ sagen, wie viele Einheiten auf einen Zoll gehen, oder in mm speichern.',
  ],
  'resolve/size-missing': ['Breite oder Höhe der Zeichnung fehlt.', 'Mit Breite und Höhe in mm speichern.'],
  'resolve/view-box-invalid': [
    'Die viewBox ist unbrauchbar und zählt nicht.',
    'Mit einer viewBox aus vier Zahlen speichern.',
  ],
  'resolve/length-invalid': ['Eine Länge oder Zahl ist nicht lesbar.', 'Das Element ansehen und neu zeichnen.'],
  'resolve/transform-invalid': [
    'Eine Umformung (transform) ist nicht lesbar und wird nicht angewandt.',
    'Das Element ansehen und die Umformung neu setzen.',
  ],
  'resolve/path-broken': [
    'Eine Linie ist fehlerhaft beschrieben; sie ist bis zum Fehler gezeichnet.',
    'Die Form neu zeichnen.',
  ],
  'resolve/style-unreadable': [
    'Ein Teil der Stilvorlage ist nicht lesbar.',
    'Stil ausbessern oder direkt ans Element schreiben.',
  ],
  'resolve/selector-unknown': [
    'Ein Selektor ist unbekannt; seine Regel wird nicht angewandt.',
    'Den Stil direkt ans Element schreiben.',
  ],
  'resolve/colour-unknown': ['Eine Farbe ist nicht lesbar.', 'Die Farbe in einer Schreibweise von CSS angeben.'],
  'resolve/reference-missing': [
    'Ein Verweis zeigt auf etwas, das nicht in der Datei ist.',
    'Das fehlende Element zurückholen oder den Verweis entfernen.',
  ],
  'resolve/reference-cycle': ['Verweise führen im Kreis; gezeichnet wird einmal.', 'Den Verweis entfernen.'],
  'resolve/live-text': [
    'Lebende Schrift: wie weit sie reicht, hängt von den Schriften ab und ist nicht gemessen.',
    'Schrift in Pfade umwandeln.',
  ],
  'resolve/marker-unmeasured': [
    'Linien haben Markierungen (Pfeilspitzen und dergleichen), die nicht gemessen sind.',
    'In Formen umwandeln, wo sie hinausragen oder geschnitten werden sollen.',
  ],
  'resolve/filter-unmeasured': [
    'Ein Filter kann über das gemessene Maß hinaus zeichnen.',
    'Den Effekt in ein Bild oder in Formen umwandeln, wo er hinausragen kann.',
  ],
  'resolve/root-transform': [
    'Die Zeichnung als Ganzes trägt eine Umformung, die nicht zählt.',
    'Die Umformung auf eine Gruppe um die Zeichnung legen.',
  ],
  'layer/hidden-skipped': [
    'Eine verborgene Ebene bleibt weg.',
    'Soll sie mit: in der Zeichnung einblenden oder unter „Antworten“ mitnehmen.',
  ],
  'layer/hidden-asked': [
    'Eine verborgene Ebene enthält einen Durchgang: Soll sie mit?',
    'Unter „Antworten“ die verborgenen Ebenen mitnehmen oder auslassen.',
  ],
  'layer/not-printed': [
    'Eine Ebene ist als nicht druckend gekennzeichnet.',
    'Deswegen bleibt nichts weg; geben Sie sie einem Durchgang oder lassen Sie sie aus.',
  ],
  'layer/same-name': [
    'Zwei Ebenen heißen gleich; sie werden nach ihrer Stelle unterschieden.',
    'Eigene Namen geben, wenn sie in verschiedene Durchgänge sollen.',
  ],
  'classify/unclaimed': [
    'Formen, die kein Name und keine Regel einem Durchgang zuordnet.',
    'Unter „Was gezeichnet ist“ den Durchgang wählen oder sie auslassen.',
  ],
  'classify/claimed-twice': [
    'Formen, die zwei Durchgänge beanspruchen.',
    'Unter „Was gezeichnet ist“ den richtigen Durchgang wählen.',
  ],
  'classify/name-against-paint': [
    'Formen, die ihr Name in den einen und ihre Farbe in den anderen Durchgang schickt.',
    'Unter „Was gezeichnet ist“ den richtigen Durchgang wählen.',
  ],
  'classify/name-unsure': [
    'Der Name der Ebene deutet auf einen Durchgang, aber ihre Formen sehen nicht danach aus.',
    'Stimmt der Name: den Durchgang unter „Was gezeichnet ist“ wählen. Sonst die Formen verlegen.',
  ],
  'classify/fill-and-stroke': [
    'Formen mit einer Fläche für den Druck und einer Linie für das Werkzeug.',
    'Unter „Antworten“ Fläche und Linie trennen lassen oder in der Zeichnung trennen.',
  ],
  'classify/use-divided': [
    'Ein Verweis (use) zeichnet Formen zweier Durchgänge.',
    'Den Verweis in der Zeichnung auflösen.',
  ],
  'classify/rule-unused': [
    'Eine Regel des Zettels trifft keine Form.',
    'Schreibweise prüfen oder die Regel streichen.',
  ],
  'classify/pass-empty': [
    'Ein Durchgang ohne eine einzige Form.',
    'Ihm Formen zuordnen oder ihn aus dem Zettel streichen.',
  ],
  'classify/no-sheet': [
    'Keine Form geht in einen Durchgang: es gibt keine Datei zu schreiben.',
    'Unter „Was gezeichnet ist“ Durchgänge wählen.',
  ],
  'classify/draws-nothing': ['Formen ohne Farbe oder Ausdehnung stehen in keinem Durchgang.', ''],
  'classify/ignored': ['Formen, die eine Regel auslässt.', ''],
  'order/interleaved': [
    'Formen eines Durchgangs liegen über und unter denen eines anderen: keine Reihenfolge ganzer Bogen sieht aus wie die Zeichnung.',
    'Ansehen, was oben liegen soll, und die Formen in der Zeichnung umordnen.',
  ],
  'order/lines-interleaved': [
    'Werkzeuglinien liegen über und unter anderen; ihre Kreuzungen sehen anders aus als in der Zeichnung. Der Maschine ist das gleich.',
    '',
  ],
  'order/effect-divided': [
    'Deckkraft, Maske, Filter oder Mischung fasst Formen mehrerer Durchgänge zusammen.',
    'Die Durchgänge in der Zeichnung trennen oder den Effekt auflösen.',
  ],
  'order/box-divided': [
    'Beschneidung, Maske oder Filter richtet sich nach dem Maß einer Gruppe, von der ein Bogen nur einen Teil hat.',
    'Die Gruppe nach Durchgängen trennen oder den Effekt auf die Formen selbst legen.',
  ],
  'order/filter-region': [
    'Ein Filter endet am Maß einer Gruppe, die Formen ohne Farbe verliert.',
    'Das Ergebnis ansehen; sonst den Filter auf die Formen selbst legen.',
  ],
  'split/script-removed': ['Ein Skript bleibt weg.', 'Nichts; ein Bogen braucht keines.'],
  'split/handler-removed': ['Ein Auslöser für Skripte bleibt weg.', 'Nichts; ein Bogen braucht keinen.'],
  'split/animation-removed': [
    'Eine Animation bleibt weg.',
    'Ansehen, ob die Zeichnung ohne sie so steht, wie sie soll.',
  ],
  'split/foreign-object-removed': [
    'Ein fremdes Objekt (foreignObject) bleibt weg.',
    'Seinen Inhalt als SVG zeichnen, wenn er gebraucht wird.',
  ],
  'split/outside-reference-removed': [
    'Ein Verweis nach außen bleibt weg.',
    'Was gebraucht wird, in die Zeichnung legen.',
  ],
  'split/foreign-left-out': ['Angaben des Zeichenprogramms, die nichts zeichnen, bleiben weg.', ''],
  'split/picture-linked': [
    'Ein verknüpftes Bild: einbetten oder auslassen?',
    'Unter „Antworten“ wählen; zum Einbetten das Bild mit der Zeichnung zusammen ablegen.',
  ],
  'split/picture-embedded': ['Ein verknüpftes Bild ist eingebettet.', ''],
  'split/picture-left-out': ['Ein verknüpftes Bild bleibt weg, wie der Zettel es sagt.', ''],
  'split/picture-refused': [
    'Ein verknüpftes Bild ist nicht da oder nicht lesbar.',
    'Das Bild mit der Zeichnung zusammen ablegen oder es auslassen.',
  ],
  'split/definition-divided': [
    'Eine Form wird in einem Durchgang gezeichnet und in einem anderen als Vorlage ganz gebraucht.',
    'Die Vorlage in der Zeichnung verdoppeln.',
  ],
} as const;
