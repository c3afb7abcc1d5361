// What findings about the made files, the sheet, lines and marks mean, in German: what it is, and what to do.

const UNLIKE = 'Die Dateien so nicht verwenden und den Fehler melden: die Zerlegung ist hier nicht treu.';

/** By code. */
export const GERMAN_FILES = {
  'mark/no-room': [
    'Auf der Zeichenfläche ist kein Platz für die Marken: auf jeder Seite fehlen {missingMm} mm.',
    'Unter „Marken und Größe“ einen Rand von {marginMm} mm angeben oder die Marken abschalten.',
  ],
  'mark/percent-lengths': [
    'Die Zeichenfläche kann nicht wachsen: Längen in Prozent würden sich ändern.',
    'Längen in festen Einheiten angeben.',
  ],
  'mark/no-such-pass': [
    'Ein Durchgang, der Passmarken tragen soll, kommt in diesem Auftrag nicht vor.',
    'Den Namen im Zettel berichtigen.',
  ],
  'mark/left-out': ['Es sind keine Marken verlangt; die Dateien können verschieden weit zeichnen.', ''],
  'compact/moved': ['Beim Verkleinern hat sich etwas verschoben; die Datei bleibt, wie sie war.', ''],
  'compact/too-large': ['Die Datei ist zu groß zum Verkleinern und bleibt, wie sie war.', ''],
  'verify/lost': ['Eine Form der Zeichnung fehlt in ihrem Durchgang.', UNLIKE],
  'verify/doubled': ['Eine Form steht öfter da, als sie soll.', UNLIKE],
  'verify/unexpected': ['Ein Bogen zeichnet etwas, das nicht auf ihn gehört.', UNLIKE],
  'verify/bytes-changed': ['Ein übernommenes Element ist nicht mehr Byte für Byte das der Zeichnung.', UNLIKE],
  'verify/chain-changed': ['Die Gruppen um eine Form sind nicht mehr die der Zeichnung.', UNLIKE],
  'verify/artboard-differs': ['Die Zeichenflächen der Dateien sind verschieden.', UNLIKE],
  'verify/box-moved': ['Eine Form liegt anders als in der Zeichnung.', UNLIKE],
  'verify/paint-changed': ['Eine Form ist anders gefärbt als in der Zeichnung.', UNLIKE],
  'verify/marks-differ': ['Die Marken der Dateien sind verschieden.', UNLIKE],
  'verify/extents-differ': ['Die Dateien zeichnen verschieden weit.', UNLIKE],
  'verify/active-content': [
    'Eine Datei enthält ein Skript, einen Auslöser, eine Animation oder einen Verweis nach außen.',
    UNLIKE,
  ],
  'verify/size-differs': ['Die Dateien nennen verschiedene Größen.', UNLIKE],
  'verify/marks-missing': [
    'Eine Datei hat keine bekannten Marken.',
    'Ansehen, wonach die Maschine den Bogen ausrichtet.',
  ],
  'verify/moved': ['Eine Form ist gegen die Zeichnung verschoben.', UNLIKE],
  'verify/scaled': ['Eine Form hat eine andere Größe als in der Zeichnung.', UNLIKE],
  'verify/missing': ['Eine Form der Zeichnung steht in keiner Datei.', UNLIKE],
  'verify/added': ['Eine Datei enthält eine Form, die nicht in der Zeichnung steht.', 'Ansehen, ob sie gewollt ist.'],
  'verify/repainted': ['Eine Form ist anders gefärbt als in der Zeichnung.', 'Ansehen, ob das gewollt ist.'],
  'witness/disagrees': ['Der zweite Prüfer sieht einen Unterschied.', UNLIKE],
  'witness/unreadable': ['Der zweite Prüfer kann eine Datei nicht lesen.', UNLIKE],
  'witness/not-asked': [
    'Der zweite Prüfer hat nicht hingesehen.',
    'Soll er hinsehen: unter „Dateien und Prüfer“ „immer“ wählen.',
  ],
  'ticket/not-json': ['Der Auftragszettel ist kein JSON.', 'An der gezeigten Stelle ausbessern.'],
  'ticket/wrong': [
    'Der Auftragszettel enthält einen unbekannten Schlüssel oder einen falschen Wert.',
    'Ausbessern, was unten genannt ist; hier auf der Seite hilft „Zurücknehmen“.',
  ],
  'profile/not-json': ['Das Profil des Betriebs ist kein JSON.', 'An der gezeigten Stelle ausbessern.'],
  'profile/wrong': [
    'Das Profil des Betriebs enthält einen unbekannten Schlüssel oder einen falschen Wert.',
    'Ausbessern, was unten genannt ist.',
  ],
  'write/exists': ['Der Ordner für die Dateien ist schon da.', 'Einen anderen Ordner nehmen.'],
  'write/failed': ['Die Dateien ließen sich nicht schreiben.', 'Platz und Rechte prüfen.'],
  'read/failed': ['Die Datei ließ sich nicht lesen.', 'Die Datei noch einmal wählen.'],
  'use/wrong': ['So ist es nicht zu gebrauchen.', 'Ändern, was unten genannt ist.'],
  cancelled: ['Angehalten.', ''],
  'sequence/stayed': ['Elemente, die sich nicht sicher umordnen lassen, behalten ihren Platz.', ''],
  'sequence/order-kept': [
    'Linien kommen nach anderen, vor denen sie kommen sollten.',
    'In der Zeichnung umordnen oder aus ihren Gruppen nehmen.',
  ],
  'sequence/start-kept': ['Linien behalten ihren Anfang, obwohl ein anderer erlaubt war.', ''],
  'sequence/no-such-pass': [
    'Ein Durchgang, dessen Linien geordnet werden sollen, kommt in diesem Auftrag nicht vor.',
    'Unter „Linien der Werkzeuge“ neu wählen.',
  ],
  'ties/no-such-pass': [
    'Ein Durchgang, der Stege bekommen soll, kommt in diesem Auftrag nicht vor oder bekommt schon andere.',
    'Unter „Linien der Werkzeuge“ neu wählen.',
  ],
  'ties/few': [
    'An einem Umriss ist nicht Platz für so viele Stege wie gewünscht.',
    'Weniger oder kürzere Stege oder kleinere Abstände von Ecken und Rilllinien angeben.',
  ],
  'ties/far-apart': [
    'Ein Umriss ist über eine längere Strecke frei als gewünscht.',
    'Mehr Stege oder kleinere Abstände von Ecken und Rilllinien angeben.',
  ],
  'ties/stretched': [
    'Schnitt und Steg sind um mehr als 5 % gedehnt oder zusammengedrückt, damit sie auf eine Linie passen.',
    'Andere Längen wählen, wenn die Perforation zu fest oder zu schwach wird.',
  ],
  'ties/line-short': [
    'Eine Linie ist zu kurz für Schnitt und Steg und wird durchgeschnitten.',
    'Kürzere Längen wählen, wenn sie halten soll.',
  ],
  'ties/left-whole': [
    'Linien, die sich nicht in Stücken schreiben lassen, bekommen keine Stege.',
    'Als einfache Linien ohne Fläche zeichnen.',
  ],
  'sheet/too-small': [
    'Die verlangten Nutzen und Marken passen nicht auf den Bogen.',
    'Weniger Nutzen, einen größeren Bogen oder kleinere Abstände angeben.',
  ],
  'sheet/bleed-into-neighbour': [
    'Der Beschnitt eines Nutzens würde in den Zuschnitt des Nachbarn reichen.',
    'Zwischen den Zuschnitten {gutterMm} mm angeben.',
  ],
  'sheet/laid-out-already': [
    'Die Zeichnung ist schon ein Bogen mit Nutzen oder trägt schon Marken.',
    'Die Zeichnung eines einzelnen Nutzens nehmen.',
  ],
  'sheet/not-kept': ['Ein Nutzen auf dem Bogen ist nicht, was der Durchgang zeichnet.', UNLIKE],
  'sheet/copy-mark-missing': [
    'Neben einem Nutzen ist kein Platz für ein eigenes Kreuz.',
    'Mehr Abstand zwischen den Zuschnitten angeben.',
  ],
  'sheet/scaled': ['Die Nutzen sind vergrößert oder verkleinert, wie verlangt.', ''],
  'turn/not-made': [
    'Die Datei eines Durchgangs auf der Rückseite lässt sich nicht spiegeln.',
    'Den Bogen an der Maschine spiegeln oder ausbessern, was im Wortlaut steht.',
  ],
  'turn/off-artboard': [
    'Eine gespiegelte Datei zeichnet bis zu {measuredMm} mm über die Zeichenfläche hinaus.',
    'Unter axisMm sagen, wo die Achse auf der Datei liegt; sonst ist es die Mitte.',
  ],
  'register/marks-unreadable': ['Eine Zeile der gemessenen Marken ist nicht lesbar.', 'Die Zeile ausbessern.'],
  'register/turned': ['Der gemessene Bogen liegt gedreht.', 'Richtig herum messen.'],
  'register/flipped': ['Der gemessene Bogen liegt gespiegelt.', 'Von der richtigen Seite messen.'],
  'register/names-mixed': ['Die Marken passen unter anderen Namen viel besser.', 'Die Namen prüfen.'],
  'register/outlier': ['Eine Marke passt schlechter als alle anderen.', 'Diese Marke noch einmal messen.'],
  'register/no-residual': [
    'Für diese Einpassung sind es zu wenige Marken, um sie zu beurteilen.',
    'Mehr Marken messen.',
  ],
  'register/beyond-tolerance': [
    'Keine Einpassung bringt alle Marken in die Toleranz.',
    'Noch einmal messen oder die Maschine prüfen.',
  ],
  'register/file-changed': [
    'Ein Durchgang ist nicht die Datei, von der das Verzeichnis spricht.',
    'Den Auftrag neu zerlegen.',
  ],
  'register/corrected-already': ['Ein Durchgang ist schon berichtigt.', 'Vom unberichtigten Auftrag ausgehen.'],
  'register/not-kept': ['Ein berichtigter Durchgang zeichnet nicht, was der Durchgang zeichnet.', UNLIKE],
} as const;
