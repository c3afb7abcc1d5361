// What findings of the checks mean, in German: what it is, and what to do.

/** By code. */
export const GERMAN_CHECKS = {
  'check/lines-tangled': [
    'Die Werkzeuglinien sind zu viele oder zu verschlungen, um sie zu prüfen.',
    'Linien vereinfachen oder selbst genau ansehen.',
  ],
  'check/outline-open': [
    'Ein Stanzumriss ist nicht geschlossen: zwischen zwei Enden ist eine Lücke.',
    'Die Enden verbinden.',
  ],
  'check/outline-not-cut': [
    'Eine Rill- oder Perforationslinie bildet den Rand, wo der Umriss geschnitten werden müsste.',
    'Dort eine Schneidlinie zeichnen.',
  ],
  'check/line-doubled': [
    'Linien eines Durchgangs liegen aufeinander: das Werkzeug fährt zweimal.',
    'Die doppelte Linie löschen.',
  ],
  'check/line-on-line': [
    'Eine Linie liegt auf der Linie eines anderen Werkzeugs, etwa Rillen auf Schneiden.',
    'Eine der beiden entfernen.',
  ],
  'check/crease-short': [
    'Eine Rill- oder Perforationslinie endet vor der Linie, zu der sie führt.',
    'Die Linie bis dorthin verlängern.',
  ],
  'check/crease-over-cut': [
    'Eine Rill- oder Perforationslinie läuft über den Schnitt hinaus.',
    'Die Linie am Schnitt enden lassen.',
  ],
  'check/crease-idle': [
    'Eine Rill- oder Perforationslinie endet mitten in einer Fläche und faltet nichts.',
    'Verlängern oder löschen.',
  ],
  'check/crease-near-cut': [
    'Eine Rill- oder Perforationslinie läuft zu dicht neben einem Schnitt.',
    'Den Abstand vergrößern oder eine der Linien entfernen.',
  ],
  'check/crease-pair-narrow': [
    'Zwei Rilllinien liegen für die Dicke des Kartons zu dicht nebeneinander.',
    'Den Abstand vergrößern.',
  ],
  'check/crease-grain': ['Wie viel gegen und wie viel mit der Laufrichtung gerillt wird.', ''],
  'check/no-line': [
    'Bild, lebende Schrift oder fremdes Objekt in einem Werkzeugdurchgang.',
    'In den Druck verlegen oder in Linien umwandeln.',
  ],
  'check/line-painted': [
    'Eine Form eines Werkzeugdurchgangs ist gefüllt, durchscheinend oder hat einen Effekt.',
    'Nur eine Linie ohne Fläche und Effekt lassen.',
  ],
  'check/line-under-art': [
    'Eine Werkzeuglinie liegt unter der Gestaltung.',
    'Ansehen, ob sie noch gilt; die Ebene nach oben legen.',
  ],
  'check/outline-crosses-itself': ['Ein Stanzumriss kreuzt sich selbst.', 'Den Umriss ausbessern.'],
  'check/segment-short': [
    'Ein Linienstück ist kürzer als ein Schritt der Maschine.',
    'Punkte, die aufeinander liegen, zusammenfassen.',
  ],
  'check/turn-sharp': [
    'Zwischen zwei scharfen Ecken liegt weniger als der Versatz des Messers.',
    'Das Stück verlängern oder die Ecke runden.',
  ],
  'check/points-needless': ['Eine Linie hat viel mehr Punkte, als sie braucht.', 'Den Pfad vereinfachen.'],
  'check/ties-few': ['Ein Umriss mit Stegen hat zu wenige.', 'Stege ergänzen.'],
  'check/tie-at-corner': ['Ein Steg liegt auf einer Ecke.', 'Den Steg auf ein gerades Stück legen.'],
  'check/cut-order': [
    'Ein Loch oder Schlitz kommt nach dem Umriss, in dem es liegt: dann ist das Teil schon lose.',
    'Loch vor Umriss zeichnen oder unter „Linien der Werkzeuge“ ordnen lassen.',
  ],
  'check/loose-piece': ['Teile, die lose herausfallen und kein Zuschnitt sind: Fenster, Löcher, Abfall.', ''],
  'check/artboard-too-large': [
    'Die Zeichenfläche ist größer als das Material ohne Greifer und Ränder.',
    'Größeres Material angeben oder die Zeichenfläche verkleinern.',
  ],
  'check/blank-off-sheet': [
    'Eine Werkzeuglinie reicht über die Kante des Bogens.',
    'In die Zeichenfläche schieben oder den Rand vergrößern.',
  ],
  'check/size-suspicious': [
    'Die Größe sieht nach vertauschten Einheiten aus.',
    'Breite und Höhe nachmessen; unter „Marken und Größe“ die Einheiten angeben.',
  ],
  'check/art-in-gripper': [
    'Etwas ist dort gezeichnet, wo die Maschine den Bogen greift oder nicht hinkommt.',
    'Aus dem Greifer rücken oder den Rand vergrößern.',
  ],
  'check/pass-size-differs': [
    'Ein Durchgang ist für einen Bogen anderer Größe eingerichtet.',
    'Größe im Zettel berichtigen.',
  ],
  'check/marks-not-there': [
    'Ein Durchgang richtet sich nach Marken, die noch nicht auf dem Bogen sind.',
    'Reihenfolge ändern oder nach Kante oder Stiften ausrichten.',
  ],
  'check/tool-on-print': ['Ein Werkzeug drückt auf eine Seite, die schon bedruckt ist.', 'Am ersten Bogen ansehen.'],
  'check/turn-axis-unsaid': [
    'Ein Durchgang läuft auf der Rückseite, und nichts sagt, wie der Bogen gewendet wird.',
    'Im Zettel die Wendeachse angeben.',
  ],
  'check/marks-in-gripper': [
    'Marken stehen, wo die Maschine den Bogen greift oder nicht hinkommt.',
    'Den Rand vergrößern.',
  ],
  'check/marks-in-blank': ['Marken stehen in einem Zuschnitt.', 'Marken nach außen legen oder den Rand vergrößern.'],
  'check/marks-covered': [
    'Marken liegen unter einem Nutzen, der später gezeichnet wird.',
    'Platz um die Nutzen lassen.',
  ],
  'check/bleed-short': [
    'Der Druck berührt die Kante des Zuschnitts und reicht nicht weit genug darüber hinaus (Beschnitt).',
    'Den Druck über die Kante hinaus verlängern.',
  ],
  'check/bleed-unchecked': [
    'Der Druck an der Kante ist zu viel oder zu verschlungen, um den Beschnitt zu prüfen.',
    'Den Beschnitt selbst ansehen.',
  ],
  'check/near-edge': [
    'Schrift oder Kleinteiliges steht zu dicht an einer Schneid- oder Rilllinie.',
    'Weiter nach innen rücken.',
  ],
  'check/picture-coarse': ['Ein Bild hat weniger Bildpunkte je Zoll als verlangt.', 'Ein feineres Bild nehmen.'],
  'check/picture-too-coarse': [
    'Ein Bild hat so wenige Bildpunkte je Zoll, dass man sie sehen wird.',
    'Ein feineres Bild nehmen oder es kleiner setzen.',
  ],
  'check/picture-oversized': [
    'Ein Bild hat weit mehr Bildpunkte je Zoll, als der Druck zeigen kann.',
    'Es darf kleiner gerechnet werden.',
  ],
  'check/picture-unread': ['Die Bildpunkte eines Bildes lassen sich nicht zählen.', 'Als PNG oder JPEG einsetzen.'],
  'check/live-text': ['Lebende Schrift im Druck: die Maschine braucht die Schriften.', 'Schrift in Pfade umwandeln.'],
  'check/hairline': ['Eine gedruckte Linie ist dünner, als der Druck sie hält.', 'Die Linie verstärken.'],
  'check/paint-unresolved': [
    'Ein Verlauf oder Muster fehlt oder ergibt keine Farbe.',
    'Verlauf oder Muster neu zuweisen.',
  ],
  'check/off-artboard': ['Formen liegen außerhalb der Zeichenfläche.', 'Hineinschieben oder löschen.'],
  'check/die-knockout': [
    'Eine weiße Linie im Druck hält die Gestaltung von einer Stanzlinie fern.',
    'Die weiße Linie entfernen, sonst blitzt es bei ungenauem Passer weiß auf.',
  ],
  'check/white-unchecked': [
    'Weiß und Druck darüber sind zu viel oder zu verschlungen, um zu prüfen, wie sie zueinander passen.',
    'Selbst ansehen oder beide vereinfachen: Weiß aus wenigen Umrissen genügt meist.',
  ],
  'check/white-bare': ['Weiß wird gedruckt, wo kein Druck darauf liegt.', 'Weiß auf die Form des Drucks beschränken.'],
  'check/white-wide': [
    'Weiß reicht näher an den Rand des Drucks, als erlaubt ist.',
    'Das Weiß weiter unterfüllen (schmaler machen).',
  ],
  'check/white-narrow': ['Weiß endet weiter innen, als verlangt ist.', 'Das Weiß näher an den Rand des Drucks führen.'],
} as const;
