<?xml version="1.0" encoding="utf-8"?>
<!DOCTYPE TS>
<TS version="2.1" language="de" sourcelanguage="en">
<context>
    <name>Cowlcast</name>
    <message>
        <source>There is no such size. Choose one from the list.</source>
        <translation>Diese Größe gibt es nicht. Wählen Sie eine aus der Liste.</translation>
    </message>
    <message>
        <source>This piece was changed after cutting it was begun, so what is cut no longer belongs to it. Undo the change to go on, or begin it anew on fresh cloth.</source>
        <translation>Dieses Teil wurde geändert, nachdem es angeschnitten war; was geschnitten ist, gehört nicht mehr dazu. Nehmen Sie die Änderung zurück, oder beginnen Sie auf frischem Stoff neu.</translation>
    </message>
    <message>
        <source>Not calibrated yet.</source>
        <translation>Noch nicht kalibriert.</translation>
    </message>
    <message>
        <source>Only the simulated table so far.</source>
        <translation>Bisher nur der simulierte Tisch.</translation>
    </message>
    <message>
        <source>No base front is chosen yet.</source>
        <translation>Noch kein Grundvorderteil gewählt.</translation>
    </message>
    <message>
        <source>The base back is not opened yet, so only the front can be cut.</source>
        <translation>Das Grundrückenteil fehlt noch; nur das Vorderteil lässt sich schneiden.</translation>
    </message>
    <message>
        <source>There is no piece to cut yet.</source>
        <translation>Noch kein Teil zu schneiden.</translation>
    </message>
    <message>
        <source>%1 of %2 pieces are still to cut.</source>
        <translation>%1 von %2 Teilen sind noch zu schneiden.</translation>
    </message>
    <message>
        <source>Drawing</source>
        <translation>Zeichnung</translation>
    </message>
    <message>
        <source>New project</source>
        <translation>Neues Projekt</translation>
    </message>
    <message>
        <source>This project has no file yet. Save it under a name.</source>
        <translation>Dieses Projekt hat noch keine Datei. Sichern Sie es unter einem Namen.</translation>
    </message>
    <message>
        <source>%1, a variant</source>
        <translation>%1, Variante</translation>
    </message>
    <message>
        <source>white</source>
        <translation>weiß</translation>
    </message>
    <message>
        <source>cream</source>
        <translation>creme</translation>
    </message>
    <message>
        <source>yellow</source>
        <translation>gelb</translation>
    </message>
    <message>
        <source>orange</source>
        <translation>orange</translation>
    </message>
    <message>
        <source>red</source>
        <translation>rot</translation>
    </message>
    <message>
        <source>rose</source>
        <translation>rosa</translation>
    </message>
    <message>
        <source>violet</source>
        <translation>violett</translation>
    </message>
    <message>
        <source>light blue</source>
        <translation>hellblau</translation>
    </message>
    <message>
        <source>navy</source>
        <translation>marineblau</translation>
    </message>
    <message>
        <source>green</source>
        <translation>grün</translation>
    </message>
    <message>
        <source>brown</source>
        <translation>braun</translation>
    </message>
    <message>
        <source>grey</source>
        <translation>grau</translation>
    </message>
    <message>
        <source>dark grey</source>
        <translation>dunkelgrau</translation>
    </message>
    <message>
        <source>black</source>
        <translation>schwarz</translation>
    </message>
    <message>
        <source>How the lines will be seen on the cloth</source>
        <translation>Wie die Linien auf dem Stoff zu sehen sind</translation>
    </message>
    <message>
        <source>The cut line, the seam line and the marks in light on this cloth, the room dimmed</source>
        <translation>Zuschnittlinie, Nahtlinie und Zeichen als Licht auf diesem Stoff, der Raum abgedunkelt</translation>
    </message>
    <message>
        <source>Drawing of the cloth</source>
        <translation>Zeichnung des Stoffs</translation>
    </message>
    <message>
        <source>&amp;Width</source>
        <translation>B&amp;reite</translation>
    </message>
    <message>
        <source>From selvedge to selvedge, as the cloth is sold</source>
        <translation>Von Webkante zu Webkante, wie der Stoff verkauft wird</translation>
    </message>
    <message>
        <source>Kind</source>
        <translation>Art</translation>
    </message>
    <message>
        <source>&amp;Knit</source>
        <translation>&amp;Maschenware</translation>
    </message>
    <message>
        <source>Stretches and drapes of itself; the grain runs with the centre front</source>
        <translation>Dehnt sich und fällt von selbst; der Fadenlauf liegt in der vorderen Mitte</translation>
    </message>
    <message>
        <source>W&amp;oven</source>
        <translation>W&amp;ebware</translation>
    </message>
    <message>
        <source>Hangs in a cowl best on the true bias: the grain runs at 45°, and the front is cut in one layer</source>
        <translation>Fällt als Wasserfall am schönsten im schrägen Fadenlauf von 45°; das Vorderteil wird einlagig geschnitten</translation>
    </message>
    <message>
        <source>Kind of cloth</source>
        <translation>Art des Stoffs</translation>
    </message>
    <message>
        <source> mm</source>
        <translation> mm</translation>
    </message>
    <message>
        <source>Thickness of one &amp;layer</source>
        <translation>Dicke einer &amp;Lage</translation>
    </message>
    <message>
        <source>The lines are drawn for the cloth's upper face: press it lightly and measure</source>
        <translation>Die Linien gelten für die Oberseite des Stoffs: leicht drücken und messen</translation>
    </message>
    <message>
        <source>Thickness</source>
        <translation>Dicke</translation>
    </message>
    <message>
        <source>Does it fit?</source>
        <translation>Passt es?</translation>
    </message>
    <message>
        <source>&amp;Colour</source>
        <translation>&amp;Farbe</translation>
    </message>
    <message>
        <source>&amp;Second colour</source>
        <translation>&amp;Zweite Farbe</translation>
    </message>
    <message>
        <source>&amp;Third colour</source>
        <translation>Dr&amp;itte Farbe</translation>
    </message>
    <message>
        <source>none</source>
        <translation>keine</translation>
    </message>
    <message>
        <source>The cloth's colour, or the main one of a pattern</source>
        <translation>Die Farbe des Stoffs, bei Mustern die häufigste</translation>
    </message>
    <message>
        <source>Of a pattern: the lines must be seen on each of its colours</source>
        <translation>Bei Mustern: die Linien müssen auf jeder Farbe zu sehen sein</translation>
    </message>
    <message>
        <source>Colour of the cloth</source>
        <translation>Farbe des Stoffs</translation>
    </message>
    <message>
        <source>Dim the room to cut this cloth: in full light some lines would hardly be seen.</source>
        <translation>Dunkeln Sie den Raum für diesen Stoff ab: bei vollem Licht wären manche Linien kaum zu sehen.</translation>
    </message>
    <message>
        <source>The lines are seen on this cloth in a lit room.</source>
        <translation>Auf diesem Stoff sind die Linien auch im hellen Raum zu sehen.</translation>
    </message>
    <message>
        <source>There is no front yet.</source>
        <translation>Noch kein Vorderteil.</translation>
    </message>
    <message>
        <source>To the cowl</source>
        <translation>Zum Wasserfall</translation>
    </message>
    <message>
        <source>There is no front to lay on it.</source>
        <translation>Kein Vorderteil, das darauf liegen könnte.</translation>
    </message>
    <message>
        <source>Drape</source>
        <translation>Länge</translation>
    </message>
    <message>
        <source>Facing</source>
        <translation>Beleg</translation>
    </message>
    <message>
        <source>Neckline</source>
        <translation>Ausschnitt</translation>
    </message>
    <message>
        <source>Move a slash line</source>
        <translation>Einschnitt verschieben</translation>
    </message>
    <message>
        <source>Drag the large handle outwards: the cowl opens as it goes. The small ones move neckline, slash lines and facing.</source>
        <translation>Ziehen Sie den großen Griff nach außen: der Wasserfall öffnet sich mit. Die kleinen bewegen Ausschnitt, Einschnitte und Beleg.</translation>
    </message>
    <message>
        <source>The cowl is opened from a base front, and there is none yet.</source>
        <translation>Der Wasserfall wird aus einem Grundvorderteil geöffnet, und noch gibt es keines.</translation>
    </message>
    <message>
        <source>Drawing of the cowl</source>
        <translation>Zeichnung des Wasserfalls</translation>
    </message>
    <message>
        <source>The slashed base on the left, the opened cowl front on the right</source>
        <translation>Links der Grundschnitt mit Einschnitten, rechts das geöffnete Vorderteil</translation>
    </message>
    <message>
        <source>What comes of it</source>
        <translation>Was daraus wird</translation>
    </message>
    <message>
        <source>&amp;Drape</source>
        <translation>&amp;Länge des Wasserfalls</translation>
    </message>
    <message>
        <source>The cowl's length, a tape laid along it from shoulder seam to shoulder seam</source>
        <translation>Die Länge des Wasserfalls, mit dem Maßband von Schulternaht zu Schulternaht</translation>
    </message>
    <message>
        <source>Han&amp;g</source>
        <translation>&amp;Falltiefe</translation>
    </message>
    <message>
        <source>How far the cowl's lowest place hangs below the neck points; sets the drape</source>
        <translation>Wie tief der Wasserfall unter den Halspunkten hängt; bestimmt seine Länge</translation>
    </message>
    <message>
        <source>&amp;Neckline lowered by</source>
        <translation>Ausschnitt tiefer &amp;um</translation>
    </message>
    <message>
        <source>How far the base's neckline is lowered at the centre front before it is slashed</source>
        <translation>Wie weit der Ausschnitt in der vorderen Mitte tiefer gelegt wird, ehe eingeschnitten wird</translation>
    </message>
    <message>
        <source>Slash lines</source>
        <translation>Einschnitte</translation>
    </message>
    <message>
        <source>Slash lines: %1. More lines spread the fullness over more, smaller openings</source>
        <translation>Einschnitte: %1. Mehr Einschnitte verteilen die Weite auf mehr und kleinere Öffnungen</translation>
    </message>
    <message>
        <source>How many slash lines</source>
        <translation>Wie viele Einschnitte</translation>
    </message>
    <message>
        <source>%1 slash lines</source>
        <translation>%1 Einschnitte</translation>
    </message>
    <message>
        <source>Where it opens most</source>
        <translation>Wo es sich am weitesten öffnet</translation>
    </message>
    <message>
        <source>H&amp;igh</source>
        <translation>H&amp;och</translation>
    </message>
    <message>
        <source>The upper slash lines open most: the folds fall high, near the neck</source>
        <translation>Die oberen Einschnitte öffnen sich am weitesten: die Falten liegen hoch, nahe am Hals</translation>
    </message>
    <message>
        <source>Ali&amp;ke</source>
        <translation>&amp;Gleich</translation>
    </message>
    <message>
        <source>All slash lines open alike</source>
        <translation>Alle Einschnitte öffnen sich gleich weit</translation>
    </message>
    <message>
        <source>L&amp;ow</source>
        <translation>T&amp;ief</translation>
    </message>
    <message>
        <source>The lower slash lines open most: the folds fall low</source>
        <translation>Die unteren Einschnitte öffnen sich am weitesten: die Falten liegen tief</translation>
    </message>
    <message>
        <source>Where the cowl opens most</source>
        <translation>Wo der Wasserfall sich am weitesten öffnet</translation>
    </message>
    <message>
        <source>Slash &amp;lines back in place</source>
        <translation>Einschnitte &amp;zurücklegen</translation>
    </message>
    <message>
        <source>Slash lines back in place</source>
        <translation>Einschnitte zurücklegen</translation>
    </message>
    <message>
        <source>Facing and pieces</source>
        <translation>Beleg und Teile</translation>
    </message>
    <message>
        <source>Fa&amp;cing depth</source>
        <translation>B&amp;elegtiefe</translation>
    </message>
    <message>
        <source>How far the cloth goes on beyond the cowl's edge, to be folded inside</source>
        <translation>Wie weit der Stoff über die Kante hinausgeht, um nach innen zu klappen</translation>
    </message>
    <message>
        <source>Facing as a piece of its o&amp;wn</source>
        <translation>Beleg als eige&amp;nes Teil</translation>
    </message>
    <message>
        <source>Cut apart and sewn on, not folded over</source>
        <translation>Getrennt geschnitten und angenäht, nicht umgeklappt</translation>
    </message>
    <message>
        <source>&amp;Back</source>
        <translation>&amp;Rückenteil</translation>
    </message>
    <message>
        <source>The back is cut, too</source>
        <translation>Auch das Rückenteil wird geschnitten</translation>
    </message>
    <message>
        <source>Inner &amp;panel</source>
        <translation>Innen&amp;stück</translation>
    </message>
    <message>
        <source>A panel under the cowl, so that it can be worn on its own</source>
        <translation>Ein Stück unter dem Wasserfall, damit das Oberteil allein getragen werden kann</translation>
    </message>
    <message>
        <source>Where the inner panel's top edge lies at the centre front</source>
        <translation>Wo die Oberkante des Innenstücks in der vorderen Mitte liegt</translation>
    </message>
    <message>
        <source>the longest that works</source>
        <translation>länger geht es nicht</translation>
    </message>
    <message>
        <source>the shortest that works</source>
        <translation>kürzer geht es nicht</translation>
    </message>
    <message>
        <source>The nearest that works</source>
        <translation>Das Nächste, das geht</translation>
    </message>
    <message>
        <source>Use a drape of %1</source>
        <translation>Länge %1 nehmen</translation>
    </message>
    <message>
        <source>Lower the neckline by %1</source>
        <translation>Ausschnitt um %1 tiefer</translation>
    </message>
    <message>
        <source>Use a facing of %1</source>
        <translation>Beleg von %1 nehmen</translation>
    </message>
    <message>
        <source>Use %1 slash lines</source>
        <translation>%1 Einschnitte nehmen</translation>
    </message>
    <message>
        <source>Open them evenly</source>
        <translation>Gleichmäßig öffnen</translation>
    </message>
    <message>
        <source>Undo the last change</source>
        <translation>Letzte Änderung zurücknehmen</translation>
    </message>
    <message>
        <source>Hangs about &lt;b&gt;%1&lt;/b&gt; deep: %2.</source>
        <translation>Fällt etwa &lt;b&gt;%1&lt;/b&gt; tief: %2.</translation>
    </message>
    <message>
        <source>Hangs about &lt;b&gt;%1&lt;/b&gt; below the neck points.</source>
        <translation>Fällt etwa &lt;b&gt;%1&lt;/b&gt; unter die Halspunkte.</translation>
    </message>
    <message>
        <source>It does not hang: the neck points are %1 apart.</source>
        <translation>Er hängt nicht: die Halspunkte liegen %1 auseinander.</translation>
    </message>
    <message>
        <source>Nothing yet: see the message above.</source>
        <translation>Noch nichts: siehe die Meldung oben.</translation>
    </message>
    <message>
        <source>The slash lines open by &lt;b&gt;%1&lt;/b&gt; from the top down; the whole front swings by &lt;b&gt;%2°&lt;/b&gt;.&lt;br&gt;Cloth for the front: &lt;b&gt;%3&lt;/b&gt; across and &lt;b&gt;%4&lt;/b&gt; along.&lt;br&gt;Down the centre front, from the cowl's edge to the hem: &lt;b&gt;%5&lt;/b&gt;.</source>
        <translation>Die Einschnitte öffnen sich von oben nach unten um &lt;b&gt;%1&lt;/b&gt;; das ganze Vorderteil schwenkt um &lt;b&gt;%2°&lt;/b&gt;.&lt;br&gt;Stoff für das Vorderteil: &lt;b&gt;%3&lt;/b&gt; quer und &lt;b&gt;%4&lt;/b&gt; längs.&lt;br&gt;In der vorderen Mitte von der Kante bis zum Saum: &lt;b&gt;%5&lt;/b&gt;.</translation>
    </message>
    <message>
        <source>The lines as they fall on the cloth. Lay the piece, then cut stroke by stroke.</source>
        <translation>Die Linien, wie sie auf den Stoff fallen. Legen Sie das Teil aus, dann schneiden Sie Zug um Zug.</translation>
    </message>
    <message>
        <source>To the &amp;table</source>
        <translation>Zum Tisch (&amp;Y)</translation>
    </message>
    <message>
        <source>Goes there</source>
        <translation>Geht dorthin</translation>
    </message>
    <message>
        <source>What is seen</source>
        <translation>Was zu sehen ist</translation>
    </message>
    <message>
        <source>&amp;On the cloth</source>
        <translation>A&amp;uf dem Stoff</translation>
    </message>
    <message>
        <source>The simulated table, photographed from above</source>
        <translation>Der simulierte Tisch, von oben fotografiert</translation>
    </message>
    <message>
        <source>The pro&amp;jector's picture</source>
        <translation>Das &amp;Projektorbild</translation>
    </message>
    <message>
        <source>The frame itself, a pixel of it for each of the projector's</source>
        <translation>Das Bild selbst, Bildpunkt für Bildpunkt des Projektors</translation>
    </message>
    <message>
        <source>The light on the table</source>
        <translation>Das Licht auf dem Tisch</translation>
    </message>
    <message>
        <source>Arrow keys move the piece, Q and E turn it, F flips it; the mouse drags it. Space goes on, Page Up goes back</source>
        <translation>Die Pfeile bewegen das Teil, Q und E drehen es, F wendet es; die Maus zieht es. Leertaste geht weiter, Bild auf zurück</translation>
    </message>
    <message>
        <source>&amp;Piece</source>
        <translation>T&amp;eil</translation>
    </message>
    <message>
        <source>Which piece is cut now, and how far the others are</source>
        <translation>Welches Teil jetzt geschnitten wird, und wie weit die anderen sind</translation>
    </message>
    <message>
        <source>&amp;Go on</source>
        <translation>&amp;Weiter</translation>
    </message>
    <message>
        <source>What comes next; the space bar or Page Down does the same</source>
        <translation>Was als Nächstes kommt; Leertaste oder Bild ab tun dasselbe</translation>
    </message>
    <message>
        <source>Take it &amp;back</source>
        <translation>&amp;Zurücknehmen</translation>
    </message>
    <message>
        <source>Takes the last one back; Page Up does the same</source>
        <translation>Nimmt das Letzte zurück; Bild auf tut dasselbe</translation>
    </message>
    <message>
        <source>Cut all the sa&amp;me</source>
        <translation>Tr&amp;otzdem schneiden</translation>
    </message>
    <message>
        <source>In spite of what is said. Pressed twice; it is written in the record</source>
        <translation>Trotz dem, was gesagt ist. Zweimal drücken; es wird vermerkt</translation>
    </message>
    <message>
        <source>On the projector</source>
        <translation>Auf dem Projektor</translation>
    </message>
    <message>
        <source>S&amp;creen</source>
        <translation>Bildschir&amp;m</translation>
    </message>
    <message>
        <source>The screen that the projector is, by name and pixels</source>
        <translation>Welcher Bildschirm der Projektor ist, nach Name und Bildpunkten</translation>
    </message>
    <message>
        <source>&amp;Show on the projector</source>
        <translation>Auf dem Pro&amp;jektor zeigen</translation>
    </message>
    <message>
        <source>Full screen there, with the same keys. A presenter's remote or a pedal goes on and back</source>
        <translation>Dort den ganzen Bildschirm, mit denselben Tasten. Auch Fernbedienung oder Pedal gehen weiter und zurück</translation>
    </message>
    <message>
        <source>No light on a real table goes by a simulated one. Calibrate your own to show this there.</source>
        <translation>Kein Licht auf einem wirklichen Tisch richtet sich nach einem simulierten. Kalibrieren Sie Ihren eigenen, um dies dort zu zeigen.</translation>
    </message>
    <message>
        <source>Laying</source>
        <translation>Auslegen</translation>
    </message>
    <message>
        <source>Turn &amp;left</source>
        <translation>&amp;Links drehen</translation>
    </message>
    <message>
        <source>A fifth of a degree anticlockwise; Q, with shift 5 degrees</source>
        <translation>Ein Fünftelgrad gegen den Uhrzeiger; Q, mit Umschalt 5 Grad</translation>
    </message>
    <message>
        <source>Turn &amp;right</source>
        <translation>&amp;Rechts drehen</translation>
    </message>
    <message>
        <source>A fifth of a degree clockwise; E, with shift 5 degrees</source>
        <translation>Ein Fünftelgrad im Uhrzeiger; E, mit Umschalt 5 Grad</translation>
    </message>
    <message>
        <source>Fl&amp;ip</source>
        <translation>We&amp;nden</translation>
    </message>
    <message>
        <source>Face down instead of face up; F</source>
        <translation>Linke Seite nach oben; F</translation>
    </message>
    <message>
        <source>To its laid-o&amp;ut place</source>
        <translation>An den Anfan&amp;gsplatz</translation>
    </message>
    <message>
        <source>Where it lay when laying began; H</source>
        <translation>Wo es lag, als das Auslegen begann; H</translation>
    </message>
    <message>
        <source>Lay it a&amp;new</source>
        <translation>Neu au&amp;slegen</translation>
    </message>
    <message>
        <source>Moves the lines to where the cloth has gone; what is cut stays cut; U</source>
        <translation>Bringt die Linien dorthin, wo der Stoff jetzt liegt; Geschnittenes bleibt geschnitten; U</translation>
    </message>
    <message>
        <source>Blade and hand</source>
        <translation>Klinge und Hand</translation>
    </message>
    <message>
        <source>&amp;%1</source>
        <translation>&amp;%1</translation>
    </message>
    <message>
        <source>A rotary cutter with a blade of %1 mm</source>
        <translation>Ein Rollschneider mit einer Klinge von %1 mm</translation>
    </message>
    <message>
        <source>Diameter of the blade, mm</source>
        <translation>Durchmesser der Klinge, mm</translation>
    </message>
    <message>
        <source>The hand that holds the blade</source>
        <translation>Die Hand, die die Klinge hält</translation>
    </message>
    <message>
        <source>Left han&amp;d</source>
        <translation>L&amp;inke Hand</translation>
    </message>
    <message>
        <source>Strokes and the hatched band are made for a left-handed cutter</source>
        <translation>Züge und schraffiertes Band für Linkshänder</translation>
    </message>
    <message>
        <source>Righ&amp;t hand</source>
        <translation>Re&amp;chte Hand</translation>
    </message>
    <message>
        <source>Strokes and the hatched band are made for a right-handed cutter</source>
        <translation>Züge und schraffiertes Band für Rechtshänder</translation>
    </message>
    <message>
        <source>Cloth</source>
        <translation>Stoff</translation>
    </message>
    <message>
        <source>Another &amp;kind of cloth …</source>
        <translation>Anderer Sto&amp;ff …</translation>
    </message>
    <message>
        <source>To the place where the cloth is said</source>
        <translation>Zu dem Ort, an dem der Stoff genannt wird</translation>
    </message>
    <message>
        <source>%1: cut</source>
        <translation>%1: geschnitten</translation>
    </message>
    <message>
        <source>%1: %2 of %3 strokes cut</source>
        <translation>%1: %2 von %3 Zügen geschnitten</translation>
    </message>
    <message>
        <source>Fold the cloth, right sides together, and lay its fold exactly on the two fine lines that say so. Do not cut along the fold. In two layers it is %1 mm high.</source>
        <translation>Den Stoff rechts auf rechts falten und den Bruch genau auf die zwei feinen Linien legen, die so heißen. Am Bruch nicht schneiden. In zwei Lagen ist er %1 mm hoch.</translation>
    </message>
    <message>
        <source>One layer, %1 mm high.</source>
        <translation>Eine Lage, %1 mm hoch.</translation>
    </message>
    <message>
        <source>Read: &amp;go on</source>
        <translation>Gelesen: &amp;weiter</translation>
    </message>
    <message>
        <source>It lies right: be&amp;gin to cut</source>
        <translation>Es liegt richtig: &amp;weiter zum Schneiden</translation>
    </message>
    <message>
        <source>This stroke is cut: &amp;go on</source>
        <translation>Dieser Zug ist geschnitten: &amp;weiter</translation>
    </message>
    <message>
        <source>Before the first stroke of a day:</source>
        <translation>Vor dem ersten Zug eines Tages:</translation>
    </message>
    <message>
        <source>Move the lines to where the cloth lies, or the cloth to the lines.</source>
        <translation>Bringen Sie die Linien zum Stoff oder den Stoff zu den Linien.</translation>
    </message>
    <message>
        <source>All strokes of this piece are cut.</source>
        <translation>Alle Züge dieses Teils sind geschnitten.</translation>
    </message>
    <message>
        <source>Stroke %1 of %2: %3.</source>
        <translation>Zug %1 von %2: %3.</translation>
    </message>
    <message>
        <source>To the &amp;pattern</source>
        <translation>Zum Schnitt (&amp;Y)</translation>
    </message>
    <message>
        <source>Lay the %1</source>
        <translation>%1 auslegen</translation>
    </message>
    <message>
        <source>Photographing the simulated table …</source>
        <translation>Der simulierte Tisch wird fotografiert …</translation>
    </message>
    <message>
        <source>Seen from above, the room dimmed. Read back from the simulated cloth, the cut line lies within %1 mm of true, 95 times in 100.</source>
        <translation>Von oben gesehen, der Raum abgedunkelt. Vom simulierten Stoff abgelesen liegt die Zuschnittlinie in 95 von 100 Fällen höchstens %1 mm daneben.</translation>
    </message>
    <message>
        <source>Seen from above, the room dimmed.</source>
        <translation>Von oben gesehen, der Raum abgedunkelt.</translation>
    </message>
    <message>
        <source>That screen is gone. Choose another one from the list.</source>
        <translation>Diesen Bildschirm gibt es nicht mehr. Wählen Sie einen anderen aus der Liste.</translation>
    </message>
    <message>
        <source>Which drawing</source>
        <translation>Welche Zeichnung</translation>
    </message>
    <message>
        <source>Fron&amp;t</source>
        <translation>V&amp;orderteil</translation>
    </message>
    <message>
        <source>Name the edges of the front's drawing</source>
        <translation>Die Kanten der Vorderteil-Zeichnung benennen</translation>
    </message>
    <message>
        <source>Ba&amp;ck</source>
        <translation>Rü&amp;ckenteil</translation>
    </message>
    <message>
        <source>Name the edges of the back's drawing</source>
        <translation>Die Kanten der Rückenteil-Zeichnung benennen</translation>
    </message>
    <message>
        <source>Press, then click the line of the drawing that is the %1</source>
        <translation>Drücken, dann in der Zeichnung die Linie anklicken: %1</translation>
    </message>
    <message>
        <source>How the cowl hangs</source>
        <translation>Wie der Wasserfall hängt</translation>
    </message>
    <message>
        <source>The cowl's edge as a chain would hang between the neck points. Cloth is stiffer: take it as a guide.</source>
        <translation>Die Kante, wie eine Kette zwischen den Halspunkten hinge. Stoff ist steifer: nehmen Sie es als Anhalt.</translation>
    </message>
    <message>
        <source>collar bone</source>
        <translation>Schlüsselbein</translation>
    </message>
    <message>
        <source>waist</source>
        <translation>Taille</translation>
    </message>
    <message>
        <source>Drawing of the base</source>
        <translation>Zeichnung des Grundschnitts</translation>
    </message>
    <message>
        <source>Half front and half back, seam lines, true to scale</source>
        <translation>Halbes Vorder- und Rückenteil, Nahtlinien, maßstäblich</translation>
    </message>
    <message>
        <source>A cowl front is drafted from a plain front that fits. Where shall that plain front come from?</source>
        <translation>Ein Wasserfall-Vorderteil entsteht aus einem schlichten Vorderteil, das passt. Woher soll es kommen?</translation>
    </message>
    <message>
        <source>Draft it in a standard &amp;size</source>
        <translation>In einer Standard&amp;größe zeichnen</translation>
    </message>
    <message>
        <source>The quickest way to try: a block in a size from 00 to 20, front and back.</source>
        <translation>Am schnellsten zum Probieren: ein Grundschnitt in Größe 00 bis 20, vorn und hinten.</translation>
    </message>
    <message>
        <source>Draft it to body &amp;measures</source>
        <translation>Nach Körper&amp;maßen zeichnen</translation>
    </message>
    <message>
        <source>Eight lengths off a tape; the block follows as you type.</source>
        <translation>Acht Längen vom Maßband; der Schnitt folgt beim Tippen.</translation>
    </message>
    <message>
        <source>Open my own &amp;drawing</source>
        <translation>&amp;Eigene Zeichnung öffnen</translation>
    </message>
    <message>
        <source>An SVG file in real size. Its edges can be named by hand. Or drop it here.</source>
        <translation>Eine SVG-Datei in wahrer Größe. Kanten lassen sich von Hand benennen. Oder hierher ziehen.</translation>
    </message>
    <message>
        <source>The base comes from</source>
        <translation>Der Grundschnitt kommt aus</translation>
    </message>
    <message>
        <source>Standard &amp;size</source>
        <translation>Standard&amp;größe</translation>
    </message>
    <message>
        <source>The built-in block, drafted for a size of the ASTM D5585 table</source>
        <translation>Der eingebaute Grundschnitt für eine Größe der Tabelle ASTM D5585</translation>
    </message>
    <message>
        <source>Body &amp;measures</source>
        <translation>Körper&amp;maßen</translation>
    </message>
    <message>
        <source>The built-in block, drafted for the measures of one body</source>
        <translation>Der eingebaute Grundschnitt für die Maße eines Körpers</translation>
    </message>
    <message>
        <source>My own &amp;drawing</source>
        <translation>&amp;Eigener Zeichnung</translation>
    </message>
    <message>
        <source>A base of your own: an SVG drawing in real size, seam lines without allowance</source>
        <translation>Ein eigener Grundschnitt: eine SVG-Zeichnung in wahrer Größe, Nahtlinien ohne Zugabe</translation>
    </message>
    <message>
        <source>Si&amp;ze</source>
        <translation>G&amp;röße</translation>
    </message>
    <message>
        <source>Bust girths by ASTM D5585; measure your own and take the nearest</source>
        <translation>Oberweiten nach ASTM D5585; messen Sie Ihre und nehmen Sie die nächste</translation>
    </message>
    <message>
        <source>Size %1</source>
        <translation>Größe %1</translation>
    </message>
    <message>
        <source>&amp;Bust girth</source>
        <translation>&amp;Oberweite</translation>
    </message>
    <message>
        <source>Around the fullest part of the bust, the tape level</source>
        <translation>Um die stärkste Stelle der Brust, das Band waagerecht</translation>
    </message>
    <message>
        <source>&amp;Waist girth</source>
        <translation>Tai&amp;lle</translation>
    </message>
    <message>
        <source>Around the narrowest part of the trunk</source>
        <translation>Um die schmalste Stelle des Rumpfs</translation>
    </message>
    <message>
        <source>Hip &amp;girth</source>
        <translation>Hü&amp;fte</translation>
    </message>
    <message>
        <source>Around the hips, where the top's hem will be</source>
        <translation>Um die Hüfte, wo der Saum liegen wird</translation>
    </message>
    <message>
        <source>&amp;Neck girth</source>
        <translation>Hal&amp;sumfang</translation>
    </message>
    <message>
        <source>Around the base of the neck</source>
        <translation>Um den Halsansatz</translation>
    </message>
    <message>
        <source>Sh&amp;oulder</source>
        <translation>S&amp;chulter</translation>
    </message>
    <message>
        <source>From the neck point, at the neck's side, to the shoulder point at the arm</source>
        <translation>Vom Halspunkt an der Halsseite zum Schulterpunkt am Arm</translation>
    </message>
    <message>
        <source>Back &amp;length</source>
        <translation>&amp;Rückenlänge</translation>
    </message>
    <message>
        <source>From the bone at the nape down to the waist</source>
        <translation>Vom Nackenwirbel bis zur Taille</translation>
    </message>
    <message>
        <source>Waist &amp;to hem</source>
        <translation>Taille bis Sa&amp;um</translation>
    </message>
    <message>
        <source>From the waist down to where the top ends</source>
        <translation>Von der Taille bis dorthin, wo das Oberteil endet</translation>
    </message>
    <message>
        <source>Ease (&amp;U)</source>
        <translation>&amp;Zugabe</translation>
    </message>
    <message>
        <source>Added to all girths; below zero for a close fit in stretchy cloth</source>
        <translation>Kommt zu allen Umfängen; unter null für engen Sitz in dehnbarem Stoff</translation>
    </message>
    <message>
        <source>Open the f&amp;ront …</source>
        <translation>&amp;Vorderteil öffnen …</translation>
    </message>
    <message>
        <source>An SVG file with the half front's seam lines, real size</source>
        <translation>Eine SVG-Datei mit den Nahtlinien des halben Vorderteils in wahrer Größe</translation>
    </message>
    <message>
        <source>Open the bac&amp;k …</source>
        <translation>&amp;Rückenteil öffnen …</translation>
    </message>
    <message>
        <source>An SVG file with the half back's seam lines, real size</source>
        <translation>Eine SVG-Datei mit den Nahtlinien des halben Rückenteils in wahrer Größe</translation>
    </message>
    <message>
        <source>&amp;Name the edges by hand</source>
        <translation>&amp;Kanten von Hand benennen</translation>
    </message>
    <message>
        <source>Say which line is the centre front, the neckline and so on, by clicking them</source>
        <translation>Durch Anklicken sagen, welche Linie die vordere Mitte, der Ausschnitt und so weiter ist</translation>
    </message>
    <message>
        <source>Another base</source>
        <translation>Anderer Grundschnitt</translation>
    </message>
    <message>
        <source>Open the base front</source>
        <translation>Grundvorderteil öffnen</translation>
    </message>
    <message>
        <source>Open the base back</source>
        <translation>Grundrückenteil öffnen</translation>
    </message>
    <message>
        <source>SVG drawings (*.svg)</source>
        <translation>SVG-Zeichnungen (*.svg)</translation>
    </message>
    <message>
        <source>Name the %1</source>
        <translation>Kante benennen: %1</translation>
    </message>
    <message>
        <source>none opened yet</source>
        <translation>noch nichts geöffnet</translation>
    </message>
    <message>
        <source>%1, bust %2</source>
        <translation>%1, Oberweite %2</translation>
    </message>
    <message>
        <source>The plain knit top that fits: its half front and its half back.</source>
        <translation>Das schlichte Oberteil, das passt: das halbe Vorderteil und das halbe Rückenteil.</translation>
    </message>
    <message>
        <source>Which line is the &lt;b&gt;%1&lt;/b&gt;? Click it in the drawing.</source>
        <translation>Welche Linie ist &lt;b&gt;%1&lt;/b&gt;? Klicken Sie sie in der Zeichnung an.</translation>
    </message>
    <message>
        <source>Open another file …</source>
        <translation>Andere Datei öffnen …</translation>
    </message>
    <message>
        <source>Name the edges by hand</source>
        <translation>Kanten von Hand benennen</translation>
    </message>
    <message>
        <source>Half front &lt;b&gt;%1&lt;/b&gt; wide and &lt;b&gt;%2&lt;/b&gt; long; the whole front &lt;b&gt;%3&lt;/b&gt; from underarm to underarm.</source>
        <translation>Halbes Vorderteil &lt;b&gt;%1&lt;/b&gt; breit und &lt;b&gt;%2&lt;/b&gt; lang; das ganze &lt;b&gt;%3&lt;/b&gt; von Achsel zu Achsel.</translation>
    </message>
    <message>
        <source>the base, slashed</source>
        <translation>eingeschnitten</translation>
    </message>
    <message>
        <source>Slash line %1</source>
        <translation>Einschnitt %1</translation>
    </message>
    <message>
        <source>%1 below the neckline</source>
        <translation>%1 unter dem Ausschnitt</translation>
    </message>
    <message>
        <source>Hinge of slash line %1</source>
        <translation>Drehpunkt von Einschnitt %1</translation>
    </message>
    <message>
        <source>Neckline lowered</source>
        <translation>Ausschnitt tiefer</translation>
    </message>
    <message>
        <source>the cowl front, half</source>
        <translation>das halbe Vorderteil</translation>
    </message>
    <message>
        <source>fold</source>
        <translation>Bruch</translation>
    </message>
    <message>
        <source>centre</source>
        <translation>Mitte</translation>
    </message>
    <message>
        <source>centre front</source>
        <translation>vordere Mitte</translation>
    </message>
    <message>
        <source>centre back</source>
        <translation>hintere Mitte</translation>
    </message>
    <message>
        <source>neckline</source>
        <translation>Ausschnitt</translation>
    </message>
    <message>
        <source>shoulder</source>
        <translation>Schulter</translation>
    </message>
    <message>
        <source>armhole</source>
        <translation>Armloch</translation>
    </message>
    <message>
        <source>side seam</source>
        <translation>Seitennaht</translation>
    </message>
    <message>
        <source>hem</source>
        <translation>Saum</translation>
    </message>
    <message>
        <source>base front</source>
        <translation>Vorderteil</translation>
    </message>
    <message>
        <source>base back</source>
        <translation>Rückenteil</translation>
    </message>
    <message>
        <source>%1 deep</source>
        <translation>%1 tief</translation>
    </message>
    <message>
        <source>selvedge</source>
        <translation>Webkante</translation>
    </message>
    <message>
        <source>cloth, %1 wide</source>
        <translation>Stoff, %1 breit</translation>
    </message>
    <message>
        <source>Seams and steps are shown here, once there is a base front to draft from.</source>
        <translation>Hier stehen Nähte und Schritte, sobald es ein Grundvorderteil gibt.</translation>
    </message>
    <message>
        <source>Drawing of the step</source>
        <translation>Zeichnung des Schritts</translation>
    </message>
    <message>
        <source>One step of the draft, true to scale</source>
        <translation>Ein Schritt der Konstruktion, maßstäblich</translation>
    </message>
    <message>
        <source>Seams that meet</source>
        <translation>Nähte, die zusammenkommen</translation>
    </message>
    <message>
        <source>Also to cut</source>
        <translation>Außerdem zu schneiden</translation>
    </message>
    <message>
        <source>Save the han&amp;dout …</source>
        <translation>&amp;Merkblatt sichern …</translation>
    </message>
    <message>
        <source>A PDF of the steps, a page each, with their rules</source>
        <translation>Eine PDF-Datei der Schritte mit ihren Regeln, je eine Seite</translation>
    </message>
    <message>
        <source>Save the &amp;record …</source>
        <translation>&amp;Protokoll sichern …</translation>
    </message>
    <message>
        <source>A PDF page with every number of the draft</source>
        <translation>Eine PDF-Seite mit allen Zahlen der Konstruktion</translation>
    </message>
    <message>
        <source>Save the handout</source>
        <translation>Merkblatt sichern</translation>
    </message>
    <message>
        <source>handout.pdf</source>
        <translation>merkblatt.pdf</translation>
    </message>
    <message>
        <source>Save the record</source>
        <translation>Protokoll sichern</translation>
    </message>
    <message>
        <source>record.pdf</source>
        <translation>protokoll.pdf</translation>
    </message>
    <message>
        <source>Step &amp;back</source>
        <translation>Schritt &amp;zurück</translation>
    </message>
    <message>
        <source>The step before</source>
        <translation>Der Schritt davor</translation>
    </message>
    <message>
        <source>&amp;Next step</source>
        <translation>&amp;Nächster Schritt</translation>
    </message>
    <message>
        <source>The step after</source>
        <translation>Der Schritt danach</translation>
    </message>
    <message>
        <source>&amp;Opening</source>
        <translation>Ö&amp;ffnung</translation>
    </message>
    <message>
        <source>From closed, on the left, to open as drafted</source>
        <translation>Von geschlossen, links, bis offen wie gezeichnet</translation>
    </message>
    <message>
        <source>&amp;Play the opening</source>
        <translation>Öffnung ab&amp;spielen</translation>
    </message>
    <message>
        <source>The slash lines open from closed to as drafted</source>
        <translation>Die Einschnitte öffnen sich von geschlossen bis wie gezeichnet</translation>
    </message>
    <message>
        <source>Step %1 of %2: %3</source>
        <translation>Schritt %1 von %2: %3</translation>
    </message>
    <message>
        <source>Seams are laid along each other once there is a back, too.</source>
        <translation>Nähte werden verglichen, sobald es auch ein Rückenteil gibt.</translation>
    </message>
    <message>
        <source>%1 on both</source>
        <translation>%1 an beiden</translation>
    </message>
    <message>
        <source>%1 and %2: they do not meet</source>
        <translation>%1 und %2: sie passen nicht</translation>
    </message>
    <message>
        <source>Elastic and bands are reckoned once there is a back, too.</source>
        <translation>Gummi und Bänder werden berechnet, sobald es auch ein Rückenteil gibt.</translation>
    </message>
    <message>
        <source>Clear elastic for the back neck, %1 wide: &lt;b&gt;%2&lt;/b&gt; with both tails, set %3 from the edge.</source>
        <translation>Transparentgummi für den hinteren Ausschnitt, %1 breit: &lt;b&gt;%2&lt;/b&gt; mit beiden Enden, %3 von der Kante.</translation>
    </message>
    <message>
        <source>PDF pages (*.pdf)</source>
        <translation>PDF-Seiten (*.pdf)</translation>
    </message>
    <message>
        <source>To the next step</source>
        <translation>Zum nächsten Schritt</translation>
    </message>
    <message>
        <source>not measured</source>
        <translation>nicht gemessen</translation>
    </message>
    <message>
        <source>From end tick to end tick with a steel rule, to a tenth of a millimetre. It fixes the size of everything that is projected.</source>
        <translation>Von Endstrich zu Endstrich mit dem Stahllineal, auf ein Zehntel Millimeter. Daran hängt die Größe von allem, was projiziert wird.</translation>
    </message>
    <message>
        <source>What a ruler measures</source>
        <translation>Was ein Lineal misst</translation>
    </message>
    <message>
        <source>Print the sheets</source>
        <translation>Blätter drucken</translation>
    </message>
    <message>
        <source>At 100 %, without fitting to the page, on plain paper, all in one go.</source>
        <translation>Mit 100 %, ohne Anpassen an die Seite, auf schlichtem Papier, alle in einem Zug.</translation>
    </message>
    <message>
        <source>Num&amp;ber of sheets</source>
        <translation>Anzahl der B&amp;lätter</translation>
    </message>
    <message>
        <source>Four serve most tables; a very long light takes six</source>
        <translation>Vier reichen für die meisten Tische; ein sehr langes Licht braucht sechs</translation>
    </message>
    <message>
        <source>&amp;Save the sheets as PDF …</source>
        <translation>Blätter als PDF &amp;sichern …</translation>
    </message>
    <message>
        <source>A file to print, of the paper chosen in the Table menu</source>
        <translation>Eine Datei zum Drucken, für das im Tisch-Menü gewählte Papier</translation>
    </message>
    <message>
        <source>Save the sheets</source>
        <translation>Blätter sichern</translation>
    </message>
    <message>
        <source>sheets.pdf</source>
        <translation>blaetter.pdf</translation>
    </message>
    <message>
        <source>PDF (*.pdf)</source>
        <translation>PDF (*.pdf)</translation>
    </message>
    <message>
        <source>Measure the rulers</source>
        <translation>Lineale messen</translation>
    </message>
    <message>
        <source>&amp;Long ruler, 240 mm as designed</source>
        <translation>Lan&amp;ges Lineal, gezeichnet 240 mm</translation>
    </message>
    <message>
        <source>Sho&amp;rt ruler, 180 mm as designed</source>
        <translation>Ku&amp;rzes Lineal, gezeichnet 180 mm</translation>
    </message>
    <message>
        <source>&amp;Next: lay them</source>
        <translation>&amp;Weiter: auslegen</translation>
    </message>
    <message>
        <source>No projector here?</source>
        <translation>Kein Projektor hier?</translation>
    </message>
    <message>
        <source>Everything can be tried on a simulated table first. It is photographed and calibrated just as a real one.</source>
        <translation>Alles lässt sich zuerst an einem simulierten Tisch probieren. Er wird fotografiert und kalibriert wie ein wirklicher.</translation>
    </message>
    <message>
        <source>&amp;Try it on a simulated table</source>
        <translation>Am simulierten Tisch &amp;probieren</translation>
    </message>
    <message>
        <source>Takes three photographs of an invented table; it needs some seconds</source>
        <translation>Macht drei Fotos eines erfundenen Tisches; das braucht einige Sekunden</translation>
    </message>
    <message>
        <source>Lay the sheets</source>
        <translation>Blätter auslegen</translation>
    </message>
    <message>
        <source>Say which screen the projector is. Then lay the sheets in its light: flat, loose, towards the corners, inside the light and on the mat.</source>
        <translation>Sagen Sie, welcher Bildschirm der Projektor ist. Dann legen Sie die Blätter in sein Licht: flach, lose, zu den Ecken hin, innerhalb des Lichts und auf der Matte.</translation>
    </message>
    <message>
        <source>Pro&amp;jector</source>
        <translation>Pro&amp;jektor</translation>
    </message>
    <message>
        <source>The screen that the projector is, by name and pixels. Set it to show its own pixels, without any scaling</source>
        <translation>Welcher Bildschirm der Projektor ist, nach Name und Bildpunkten. Stellen Sie ihn auf seine eigenen Bildpunkte, ohne Skalierung</translation>
    </message>
    <message>
        <source>Shown from another machine? Save both pictures and show them full screen there, one pixel to a pixel.</source>
        <translation>Gezeigt von einem anderen Rechner? Sichern Sie beide Bilder und zeigen Sie sie dort bildschirmfüllend, Bildpunkt auf Bildpunkt.</translation>
    </message>
    <message>
        <source>Save &amp;both pictures …</source>
        <translation>B&amp;eide Bilder sichern …</translation>
    </message>
    <message>
        <source>target.png and plain.png, in a folder of your choice</source>
        <translation>target.png und plain.png, in einem Ordner Ihrer Wahl</translation>
    </message>
    <message>
        <source>Folder for the two pictures</source>
        <translation>Ordner für die beiden Bilder</translation>
    </message>
    <message>
        <source>&amp;Next: photograph them</source>
        <translation>&amp;Weiter: fotografieren</translation>
    </message>
    <message>
        <source>Show the tar&amp;get</source>
        <translation>&amp;Zielbild zeigen</translation>
    </message>
    <message>
        <source>The chequered picture, full screen on the projector. Space changes to plain light and back, Escape ends</source>
        <translation>Das gewürfelte Bild, auf dem ganzen Projektor. Leertaste wechselt zu reinem Licht und zurück, Escape beendet</translation>
    </message>
    <message>
        <source>Show pla&amp;in light</source>
        <translation>&amp;Reines Licht zeigen</translation>
    </message>
    <message>
        <source>Plain light, full screen on the projector</source>
        <translation>Reines Licht auf dem ganzen Projektor</translation>
    </message>
    <message>
        <source>Photograph the table</source>
        <translation>Den Tisch fotografieren</translation>
    </message>
    <message>
        <source>Two photographs under the target, from two sides, and one under plain light; more are better. A phone in the hand will do. Nothing may move in between.</source>
        <translation>Zwei Fotos unter dem Zielbild, von zwei Seiten, und eines unter reinem Licht; mehr sind besser. Ein Telefon in der Hand genügt. Dazwischen darf sich nichts bewegen.</translation>
    </message>
    <message>
        <source>Drop the photographs anywhere in this window, or:</source>
        <translation>Ziehen Sie die Fotos irgendwohin in dieses Fenster, oder:</translation>
    </message>
    <message>
        <source>Choose &amp;photographs …</source>
        <translation>&amp;Fotos wählen …</translation>
    </message>
    <message>
        <source>JPEG or PNG files, as the camera saved them</source>
        <translation>JPEG- oder PNG-Dateien, wie die Kamera sie gesichert hat</translation>
    </message>
    <message>
        <source>&amp;Watch a folder …</source>
        <translation>&amp;Ordner beobachten …</translation>
    </message>
    <message>
        <source>Photographs that arrive there from now on come in by themselves, from a phone that sends them to this machine, for example</source>
        <translation>Fotos, die dort von jetzt an ankommen, kommen von selbst herein, etwa von einem Telefon, das sie hierher schickt</translation>
    </message>
    <message>
        <source>Photographs ta&amp;ken</source>
        <translation>A&amp;ufgenommene Fotos</translation>
    </message>
    <message>
        <source>All of these are used</source>
        <translation>Alle werden benutzt</translation>
    </message>
    <message>
        <source>&amp;Leave these out</source>
        <translation>Diese weg&amp;lassen</translation>
    </message>
    <message>
        <source>Takes the marked photographs from the list; the files stay</source>
        <translation>Nimmt die markierten Fotos aus der Liste; die Dateien bleiben</translation>
    </message>
    <message>
        <source>&amp;Next: calibrate</source>
        <translation>&amp;Weiter: kalibrieren</translation>
    </message>
    <message>
        <source>Calibrate</source>
        <translation>Kalibrieren</translation>
    </message>
    <message>
        <source>&amp;Calibrate</source>
        <translation>&amp;Kalibrieren</translation>
    </message>
    <message>
        <source>Takes a few seconds; you can go on elsewhere meanwhile</source>
        <translation>Dauert einige Sekunden; Sie können inzwischen anderswo weitermachen</translation>
    </message>
    <message>
        <source>All n&amp;umbers</source>
        <translation>Alle &amp;Zahlen</translation>
    </message>
    <message>
        <source>What the calibration says of itself, to read or to keep</source>
        <translation>Was die Kalibrierung von sich sagt, zum Lesen oder Aufheben</translation>
    </message>
    <message>
        <source>For thick cloth</source>
        <translation>Für dicken Stoff</translation>
    </message>
    <message>
        <source>Hei&amp;ght of the projector's lens</source>
        <translation>&amp;Linsenhöhe des Projektors</translation>
    </message>
    <message>
        <source>From the mat straight up to the middle of the lens, by tape. It helps with cloth thicker than 2 mm; 0: not measured</source>
        <translation>Von der Matte senkrecht zur Mitte der Linse, mit dem Maßband. Hilft bei Stoff über 2 mm; 0: nicht gemessen</translation>
    </message>
    <message>
        <source>Height of the projector's lens</source>
        <translation>Linsenhöhe des Projektors</translation>
    </message>
    <message>
        <source>not chosen yet</source>
        <translation>noch nicht gewählt</translation>
    </message>
    <message>
        <source>another one, %1 × %2</source>
        <translation>ein anderer, %1 × %2</translation>
    </message>
    <message>
        <source>The projector is %1</source>
        <translation>Der Projektor ist %1</translation>
    </message>
    <message>
        <source>Measure both rulers of one sheet, from end tick to end tick.</source>
        <translation>Messen Sie beide Lineale eines Blattes, von Endstrich zu Endstrich.</translation>
    </message>
    <message>
        <source>Loose on the mat, flat, towards the corners of the light. You stand at the foot.</source>
        <translation>Lose auf der Matte, flach, zu den Ecken des Lichts hin. Sie stehen unten.</translation>
    </message>
    <message>
        <source>From two sides, all sheets in the picture. Nothing may move in between.</source>
        <translation>Von zwei Seiten, alle Blätter im Bild. Dazwischen darf sich nichts bewegen.</translation>
    </message>
    <message>
        <source>The map of the light will be drawn here, with its error at every place.</source>
        <translation>Hier wird die Karte des Lichts gezeichnet, mit ihrem Fehler an jeder Stelle.</translation>
    </message>
    <message>
        <source>Sheets, a few photographs, and the program knows where every point of light lands on your mat.</source>
        <translation>Blätter, ein paar Fotos, und das Programm weiß, wohin jeder Lichtpunkt auf Ihrer Matte fällt.</translation>
    </message>
    <message>
        <source>Steps of calibrating</source>
        <translation>Schritte des Kalibrierens</translation>
    </message>
    <message>
        <source>&amp;1  Print</source>
        <translation>&amp;1  Drucken</translation>
    </message>
    <message>
        <source>Make the sheets and measure their rulers</source>
        <translation>Die Blätter machen und ihre Lineale messen</translation>
    </message>
    <message>
        <source>&amp;2  Lay</source>
        <translation>&amp;2  Legen</translation>
    </message>
    <message>
        <source>Lay the sheets in the projector's light</source>
        <translation>Die Blätter in das Licht des Projektors legen</translation>
    </message>
    <message>
        <source>&amp;3  Photos</source>
        <translation>&amp;3  Foto</translation>
    </message>
    <message>
        <source>Bring in photographs of the table</source>
        <translation>Fotos des Tisches hereinholen</translation>
    </message>
    <message>
        <source>&amp;4  Calibrate</source>
        <translation>&amp;4  Abgleich</translation>
    </message>
    <message>
        <source>Work out where the light lands, and how right that is</source>
        <translation>Berechnen, wohin das Licht fällt und wie genau das stimmt</translation>
    </message>
    <message>
        <source>Progress</source>
        <translation>Fortschritt</translation>
    </message>
    <message>
        <source>How far the work beside the window has come</source>
        <translation>Wie weit die Arbeit im Hintergrund ist</translation>
    </message>
    <message>
        <source>St&amp;op</source>
        <translation>Abb&amp;rechen</translation>
    </message>
    <message>
        <source>Leave the work; nothing of the project is changed</source>
        <translation>Die Arbeit lassen; am Projekt ändert sich nichts</translation>
    </message>
    <message>
        <source>This is the simulated table, not yours.</source>
        <translation>Dies ist der simulierte Tisch, nicht Ihrer.</translation>
    </message>
    <message>
        <source>The size rests on the printed page alone: measure the rulers for a sure scale.</source>
        <translation>Die Größe beruht allein auf der gedruckten Seite: messen Sie die Lineale für einen sicheren Maßstab.</translation>
    </message>
    <message>
        <source>For cloth this thick measure the height of the projector's lens, below, and calibrate again.</source>
        <translation>Für so dicken Stoff messen Sie unten die Höhe der Projektorlinse und kalibrieren Sie neu.</translation>
    </message>
    <message>
        <source>Add photographs</source>
        <translation>Fotos hinzufügen</translation>
    </message>
    <message>
        <source>%1 is no JPEG or PNG photograph and was left out. Set the camera to JPEG, or save a copy as JPEG.</source>
        <translation>%1 ist kein JPEG- oder PNG-Foto und wurde weggelassen. Stellen Sie die Kamera auf JPEG, oder sichern Sie eine Kopie als JPEG.</translation>
    </message>
    <message>
        <source>Saved as %1. Print it at 100 %.</source>
        <translation>Gesichert als %1. Drucken Sie es mit 100 %.</translation>
    </message>
    <message>
        <source>It is not said which screen the projector is. Choose it in the list above.</source>
        <translation>Es ist nicht gesagt, welcher Bildschirm der Projektor ist. Wählen Sie ihn in der Liste oben.</translation>
    </message>
    <message>
        <source>No screen here has the projector's %1 × %2 pixels. Plug the projector in and switch it on, then choose it in the list.</source>
        <translation>Kein Bildschirm hier hat die %1 × %2 Bildpunkte des Projektors. Stecken Sie den Projektor an, schalten Sie ihn ein und wählen Sie ihn in der Liste.</translation>
    </message>
    <message>
        <source>Photographs of the table</source>
        <translation>Fotos des Tisches</translation>
    </message>
    <message>
        <source>Photographs (*.jpg *.jpeg *.png *.JPG *.JPEG *.PNG)</source>
        <translation>Fotos (*.jpg *.jpeg *.png *.JPG *.JPEG *.PNG)</translation>
    </message>
    <message>
        <source>Folder that photographs arrive in</source>
        <translation>Ordner, in dem Fotos ankommen</translation>
    </message>
    <message>
        <source>Watching %1. Press again to end.</source>
        <translation>%1 wird beobachtet. Nochmals drücken zum Beenden.</translation>
    </message>
    <message>
        <source>Leave photographs out</source>
        <translation>Fotos weglassen</translation>
    </message>
    <message>
        <source>Photograph %1 of %2 of the simulated table</source>
        <translation>Foto %1 von %2 des simulierten Tisches</translation>
    </message>
    <message>
        <source>Lay out the simulated table</source>
        <translation>Den simulierten Tisch aufbauen</translation>
    </message>
    <message>
        <source>Laying out the simulated table</source>
        <translation>Der simulierte Tisch wird aufgebaut</translation>
    </message>
    <message>
        <source>There are no photographs of the table yet. Take some first.</source>
        <translation>Es gibt noch keine Fotos des Tisches. Machen Sie zuerst welche.</translation>
    </message>
    <message>
        <source>To the photographs</source>
        <translation>Zu den Fotos</translation>
    </message>
    <message>
        <source>It is not said which screen the projector is, so its pixels are not known. Choose it.</source>
        <translation>Es ist nicht gesagt, welcher Bildschirm der Projektor ist; seine Bildpunkte sind unbekannt. Wählen Sie ihn.</translation>
    </message>
    <message>
        <source>To the projector</source>
        <translation>Zum Projektor</translation>
    </message>
    <message>
        <source>Reading the photographs</source>
        <translation>Die Fotos werden gelesen</translation>
    </message>
    <message>
        <source>Finding sheets and light in them</source>
        <translation>Blätter und Licht werden darin gesucht</translation>
    </message>
    <message>
        <source>Caution: %1</source>
        <translation>Vorsicht: %1</translation>
    </message>
    <message>
        <source>Calibrate the table</source>
        <translation>Den Tisch kalibrieren</translation>
    </message>
    <message>
        <source>Where the projector's light falls on the cutting table, measured with sheets and photographs</source>
        <translation>Wohin das Licht des Projektors auf dem Zuschneidetisch fällt, gemessen mit Blättern und Fotos</translation>
    </message>
    <message>
        <source>The plain front and back that the cowl is drafted from</source>
        <translation>Das schlichte Vorder- und Rückenteil, aus dem der Wasserfall entsteht</translation>
    </message>
    <message>
        <source>How long the cowl is, how deep it hangs and where it is slashed</source>
        <translation>Wie lang der Wasserfall ist, wie tief er fällt und wo eingeschnitten wird</translation>
    </message>
    <message>
        <source>How wide and thick the cloth is, and its colours</source>
        <translation>Wie breit und dick der Stoff ist, und seine Farben</translation>
    </message>
    <message>
        <source>The lines in light on the cloth, piece by piece</source>
        <translation>Die Linien als Licht auf dem Stoff, Teil für Teil</translation>
    </message>
    <message>
        <source>Which seams meet, what elastic and bands to cut, and how the draft was made</source>
        <translation>Welche Nähte zusammenkommen, welche Gummis und Bänder zu schneiden sind, und wie der Schnitt entstand</translation>
    </message>
    <message>
        <source>Nothing is missing</source>
        <translation>Es fehlt nichts</translation>
    </message>
    <message>
        <source>Missing: %1</source>
        <translation>Es fehlt: %1</translation>
    </message>
    <message>
        <source>ready</source>
        <translation>fertig</translation>
    </message>
    <message>
        <source>Light that is to be cut by must lie true on the mat. Printed sheets and a few photographs see to that. Here a simulated table is photographed in place of yours.</source>
        <translation>Licht, nach dem geschnitten wird, muss auf der Matte stimmen. Dafür sorgen gedruckte Blätter und ein paar Fotos. Hier wird statt Ihres Tisches ein simulierter fotografiert.</translation>
    </message>
    <message>
        <source>From the photographs the program works out where every point of light lands, and says how far off it may be.</source>
        <translation>Aus den Fotos berechnet das Programm, wohin jeder Lichtpunkt fällt, und sagt, wie weit er daneben liegen kann.</translation>
    </message>
    <message>
        <source>A cowl front is drafted from a plain front that fits. For now, take one in a standard size.</source>
        <translation>Ein Wasserfall-Vorderteil entsteht aus einem schlichten Vorderteil, das passt. Nehmen Sie für jetzt eines in Standardgröße.</translation>
    </message>
    <message>
        <source>The drape is the cowl's length from shoulder seam to shoulder seam. Drag it, and the front opens.</source>
        <translation>Die Wasserfalllänge misst von Schulternaht zu Schulternaht. Ziehen Sie daran, und das Vorderteil öffnet sich.</translation>
    </message>
    <message>
        <source>Photograph the simulated table</source>
        <translation>Den simulierten Tisch fotografieren</translation>
    </message>
    <message>
        <source>Calibrate it</source>
        <translation>Kalibrieren</translation>
    </message>
    <message>
        <source>Take size 8</source>
        <translation>Größe 8 nehmen</translation>
    </message>
    <message>
        <source>Open it to 54 cm</source>
        <translation>Auf 54 cm öffnen</translation>
    </message>
    <message>
        <source>Go on at the table</source>
        <translation>Am Tisch weitermachen</translation>
    </message>
    <message>
        <source>Leave the tour</source>
        <translation>Rundgang verlassen</translation>
    </message>
    <message>
        <source>The project stays as it is (Ctrl+Shift+T)</source>
        <translation>Das Projekt bleibt, wie es ist (Strg+Umschalt+T)</translation>
    </message>
    <message>
        <source>Tour, %1 of %2</source>
        <translation>Rundgang, %1 von %2</translation>
    </message>
    <message>
        <source>On to: %1</source>
        <translation>Weiter zu: %1</translation>
    </message>
    <message>
        <source>Does this step for you (Ctrl+Shift+Return)</source>
        <translation>Macht diesen Schritt für Sie (Strg+Umschalt+Eingabe)</translation>
    </message>
    <message>
        <source>Goes there (Ctrl+Shift+Return)</source>
        <translation>Geht dorthin (Strg+Umschalt+Eingabe)</translation>
    </message>
    <message>
        <source>End the tour</source>
        <translation>Rundgang beenden</translation>
    </message>
    <message>
        <source>Cowlcast projects (*%1)</source>
        <translation>Cowlcast-Projekte (*%1)</translation>
    </message>
    <message>
        <source>&amp;Undo</source>
        <translation>&amp;Rückgängig</translation>
    </message>
    <message>
        <source>&amp;Redo</source>
        <translation>&amp;Wiederholen</translation>
    </message>
    <message>
        <source>after the cowl</source>
        <translation>nach dem Wasserfall</translation>
    </message>
    <message>
        <source>after the pattern</source>
        <translation>nach dem Schnitt</translation>
    </message>
    <message>
        <source>Save somewhere else …</source>
        <translation>Woanders sichern …</translation>
    </message>
    <message>
        <source>Save the project</source>
        <translation>Projekt sichern</translation>
    </message>
    <message>
        <source>Open a project</source>
        <translation>Projekt öffnen</translation>
    </message>
    <message>
        <source>Not saved yet</source>
        <translation>Noch nicht gesichert</translation>
    </message>
    <message>
        <source>“%1” has changes that are not saved.</source>
        <translation>„%1“ hat Änderungen, die nicht gesichert sind.</translation>
    </message>
    <message>
        <source>&amp;Save</source>
        <translation>&amp;Sichern</translation>
    </message>
    <message>
        <source>Throw the changes away</source>
        <translation>Änderungen verwerfen</translation>
    </message>
    <message>
        <source>&amp;Go on working</source>
        <translation>&amp;Weiterarbeiten</translation>
    </message>
    <message>
        <source>The changes since the last saving are lost for good</source>
        <translation>Die Änderungen seit dem letzten Sichern gehen endgültig verloren</translation>
    </message>
    <message>
        <source>Nothing happens</source>
        <translation>Nichts geschieht</translation>
    </message>
    <message>
        <source>“%1” was not saved when the program ended. It was kept.</source>
        <translation>„%1“ war nicht gesichert, als das Programm endete. Es wurde aufgehoben.</translation>
    </message>
    <message>
        <source>Go on with it</source>
        <translation>Damit weitermachen</translation>
    </message>
    <message>
        <source>&amp;File</source>
        <translation>&amp;Datei</translation>
    </message>
    <message>
        <source>&amp;Edit</source>
        <translation>&amp;Bearbeiten</translation>
    </message>
    <message>
        <source>&amp;View</source>
        <translation>&amp;Ansicht</translation>
    </message>
    <message>
        <source>&amp;At the table</source>
        <translation>Am &amp;Tisch</translation>
    </message>
    <message>
        <source>&amp;Help</source>
        <translation>&amp;Hilfe</translation>
    </message>
    <message>
        <source>&amp;New project</source>
        <translation>&amp;Neues Projekt</translation>
    </message>
    <message>
        <source>Begins an empty project</source>
        <translation>Beginnt ein leeres Projekt</translation>
    </message>
    <message>
        <source>&amp;Open …</source>
        <translation>&amp;Öffnen …</translation>
    </message>
    <message>
        <source>Opens a project that was saved</source>
        <translation>Öffnet ein gesichertes Projekt</translation>
    </message>
    <message>
        <source>Open &amp;recent</source>
        <translation>&amp;Zuletzt benutzt</translation>
    </message>
    <message>
        <source>Saves the project in its file</source>
        <translation>Sichert das Projekt in seiner Datei</translation>
    </message>
    <message>
        <source>Save &amp;as …</source>
        <translation>Sichern &amp;als …</translation>
    </message>
    <message>
        <source>Saves the project under another name</source>
        <translation>Sichert das Projekt unter anderem Namen</translation>
    </message>
    <message>
        <source>&amp;Duplicate as variant</source>
        <translation>Als &amp;Variante verdoppeln</translation>
    </message>
    <message>
        <source>Goes on with a copy under another name, to try another cowl; nothing of it is cut</source>
        <translation>Macht mit einer Kopie unter anderem Namen weiter, um einen anderen Wasserfall zu probieren; nichts davon ist geschnitten</translation>
    </message>
    <message>
        <source>&amp;Quit</source>
        <translation>&amp;Beenden</translation>
    </message>
    <message>
        <source>Closes the window</source>
        <translation>Schließt das Fenster</translation>
    </message>
    <message>
        <source>Takes the last change back</source>
        <translation>Nimmt die letzte Änderung zurück</translation>
    </message>
    <message>
        <source>Makes the change again that was taken back</source>
        <translation>Macht die zurückgenommene Änderung wieder</translation>
    </message>
    <message>
        <source>&amp;Dark or light</source>
        <translation>&amp;Dunkel oder hell</translation>
    </message>
    <message>
        <source>Changes between the dark and the light look</source>
        <translation>Wechselt zwischen dunklem und hellem Aussehen</translation>
    </message>
    <message>
        <source>&amp;Larger type</source>
        <translation>&amp;Größere Schrift</translation>
    </message>
    <message>
        <source>Larger letters and controls, for reading from afar</source>
        <translation>Größere Buchstaben und Knöpfe, aus der Ferne lesbar</translation>
    </message>
    <message>
        <source>Less &amp;motion</source>
        <translation>Weniger &amp;Bewegung</translation>
    </message>
    <message>
        <source>Nothing moves by itself</source>
        <translation>Nichts bewegt sich von selbst</translation>
    </message>
    <message>
        <source>&amp;Units</source>
        <translation>&amp;Einheiten</translation>
    </message>
    <message>
        <source>&amp;Inches</source>
        <translation>&amp;Zoll</translation>
    </message>
    <message>
        <source>&amp;Centimetres</source>
        <translation>Z&amp;entimeter</translation>
    </message>
    <message>
        <source>Lan&amp;guage</source>
        <translation>&amp;Sprache</translation>
    </message>
    <message>
        <source>&amp;Blade</source>
        <translation>&amp;Klinge</translation>
    </message>
    <message>
        <source>&amp;%1 mm</source>
        <translation>&amp;%1 mm</translation>
    </message>
    <message>
        <source>Blade &amp;hand</source>
        <translation>Schneide&amp;hand</translation>
    </message>
    <message>
        <source>&amp;Right</source>
        <translation>&amp;Rechts</translation>
    </message>
    <message>
        <source>&amp;Left</source>
        <translation>&amp;Links</translation>
    </message>
    <message>
        <source>&amp;Paper</source>
        <translation>&amp;Papier</translation>
    </message>
    <message>
        <source>&amp;A4</source>
        <translation>&amp;A4</translation>
    </message>
    <message>
        <source>&amp;Letter</source>
        <translation>&amp;Letter</translation>
    </message>
    <message>
        <source>Take the &amp;tour</source>
        <translation>&amp;Rundgang machen</translation>
    </message>
    <message>
        <source>&amp;Keys</source>
        <translation>&amp;Tasten</translation>
    </message>
    <message>
        <source>The keys of this window</source>
        <translation>Die Tasten dieses Fensters</translation>
    </message>
    <message>
        <source>&amp;About Cowlcast</source>
        <translation>&amp;Über Cowlcast</translation>
    </message>
    <message>
        <source>Version and licence</source>
        <translation>Version und Lizenz</translation>
    </message>
    <message>
        <source>Keys</source>
        <translation>Tasten</translation>
    </message>
    <message>
        <source>About Cowlcast</source>
        <translation>Über Cowlcast</translation>
    </message>
    <message>
        <source>Cowlcast drafts a cowl front from a plain knit-top pattern and projects its cutting lines, in true size, onto the cloth.

Version %1. Free software under the GPL, version 3 or later; without any warranty.</source>
        <translation>Cowlcast zeichnet ein Wasserfall-Vorderteil aus einem schlichten Schnitt für ein Oberteil und projiziert seine Zuschnittlinien in wahrer Größe auf den Stoff.

Version %1. Freie Software unter der GPL, Version 3 oder später; ohne jede Gewähr.</translation>
    </message>
    <message>
        <source>Take the tour</source>
        <translation>Rundgang machen</translation>
    </message>
    <message>
        <source>Tour</source>
        <translation>Rundgang</translation>
    </message>
    <message>
        <source>Size 8</source>
        <translation>Größe 8</translation>
    </message>
    <message>
        <source>A longer drape</source>
        <translation>Ein längerer Wasserfall</translation>
    </message>
    <message>
        <source>Table</source>
        <translation>Tisch</translation>
    </message>
    <message>
        <source>Pattern</source>
        <translation>Schnitt</translation>
    </message>
    <message>
        <source>Cowl</source>
        <translation>Wasserfall</translation>
    </message>
    <message>
        <source>Cutting</source>
        <translation>Zuschnitt</translation>
    </message>
    <message>
        <source>Sewing</source>
        <translation>Nähen</translation>
    </message>
    <message>
        <source>Choose a &amp;pattern</source>
        <translation>Schnitt &amp;wählen</translation>
    </message>
    <message>
        <source>To the place where the base front is chosen</source>
        <translation>Zu dem Ort, an dem das Grundvorderteil gewählt wird</translation>
    </message>
    <message>
        <source>Ctrl</source>
        <translation>Strg</translation>
    </message>
    <message>
        <source>Shift</source>
        <translation>Umschalt</translation>
    </message>
    <message>
        <source>Return</source>
        <translation>Eingabe</translation>
    </message>
    <message>
        <source>Backspace</source>
        <translation>Rücktaste</translation>
    </message>
    <message>
        <source>The way out of what is said above</source>
        <translation>Der Ausweg aus dem, was oben steht</translation>
    </message>
    <message>
        <source>Put away</source>
        <translation>Weglegen</translation>
    </message>
    <message>
        <source>Puts this away, as does Escape</source>
        <translation>Räumt dies weg, wie auch Escape</translation>
    </message>
    <message>
        <source>Save</source>
        <translation>Sichern</translation>
    </message>
    <message>
        <source>Saves the project, then goes on (Ctrl+S)</source>
        <translation>Sichert das Projekt und macht dann weiter (Strg+S)</translation>
    </message>
    <message>
        <source>&lt;p&gt;&lt;b&gt;Ctrl+1&lt;/b&gt; to &lt;b&gt;Ctrl+6&lt;/b&gt; go to a place; &lt;b&gt;Alt&lt;/b&gt; and the underlined letter go to a control, &lt;b&gt;Tab&lt;/b&gt; to the next.&lt;/p&gt;&lt;p&gt;&lt;b&gt;Ctrl+Return&lt;/b&gt; takes the way out that a message offers, &lt;b&gt;Escape&lt;/b&gt; puts it away; the window's own messages say their keys. &lt;b&gt;Ctrl+Z&lt;/b&gt; takes back, &lt;b&gt;Ctrl+Shift+Z&lt;/b&gt; makes again.&lt;/p&gt;&lt;p&gt;&lt;b&gt;In a drawing&lt;/b&gt; (&lt;b&gt;F6&lt;/b&gt; goes there): &lt;b&gt;Tab&lt;/b&gt; goes from handle to handle, the arrows move it, with &lt;b&gt;Shift&lt;/b&gt; five steps at once. Without a handle the arrows move the view. &lt;b&gt;+&lt;/b&gt; and &lt;b&gt;-&lt;/b&gt; zoom, &lt;b&gt;0&lt;/b&gt; shows all, &lt;b&gt;Escape&lt;/b&gt; lets go.&lt;/p&gt;&lt;p&gt;&lt;b&gt;Mouse:&lt;/b&gt; the wheel zooms, dragging the ground moves it, a double click shows all.&lt;/p&gt;</source>
        <translation>&lt;p&gt;&lt;b&gt;Strg+1&lt;/b&gt; bis &lt;b&gt;Strg+6&lt;/b&gt; gehen zu einem Ort; &lt;b&gt;Alt&lt;/b&gt; und der unterstrichene Buchstabe zu einem Bedienteil, &lt;b&gt;Tab&lt;/b&gt; zum nächsten.&lt;/p&gt;&lt;p&gt;&lt;b&gt;Strg+Eingabe&lt;/b&gt; nimmt den Ausweg, den eine Meldung bietet, &lt;b&gt;Escape&lt;/b&gt; legt sie weg; die Meldungen des Fensters selbst sagen ihre Tasten. &lt;b&gt;Strg+Z&lt;/b&gt; nimmt zurück, &lt;b&gt;Strg+Umschalt+Z&lt;/b&gt; macht wieder.&lt;/p&gt;&lt;p&gt;&lt;b&gt;In einer Zeichnung&lt;/b&gt; (&lt;b&gt;F6&lt;/b&gt; geht hin): &lt;b&gt;Tab&lt;/b&gt; geht von Griff zu Griff, die Pfeile bewegen ihn, mit &lt;b&gt;Umschalt&lt;/b&gt; fünf Schritte auf einmal. Ohne Griff bewegen die Pfeile die Ansicht. &lt;b&gt;+&lt;/b&gt; und &lt;b&gt;-&lt;/b&gt; vergrößern und verkleinern, &lt;b&gt;0&lt;/b&gt; zeigt alles, &lt;b&gt;Escape&lt;/b&gt; lässt los.&lt;/p&gt;&lt;p&gt;&lt;b&gt;Maus:&lt;/b&gt; das Rad vergrößert, Ziehen am Grund verschiebt, ein Doppelklick zeigt alles.&lt;/p&gt;</translation>
    </message>
    <message>
        <source>&amp;Guide</source>
        <translation>An&amp;leitung</translation>
    </message>
    <message>
        <source>The user's guide, at the place one is at</source>
        <translation>Die Anleitung, bei dem Ort aufgeschlagen, an dem man ist</translation>
    </message>
    <message>
        <source>Guide</source>
        <translation>Anleitung</translation>
    </message>
    <message>
        <source>Chapters</source>
        <translation>Kapitel</translation>
    </message>
    <message>
        <source>Each place of the window has a chapter</source>
        <translation>Jeder Ort des Fensters hat ein Kapitel</translation>
    </message>
    <message>
        <source>The guide's text</source>
        <translation>Der Text der Anleitung</translation>
    </message>
    <message>
        <source>The wheel and Page Down scroll; F6 changes between text and chapters</source>
        <translation>Rad und Bild ab blättern; F6 wechselt zwischen Text und Kapiteln</translation>
    </message>
    <message>
        <source>&amp;Close the guide</source>
        <translation>Anleitung &amp;schließen</translation>
    </message>
    <message>
        <source>Back to the window; Escape does the same</source>
        <translation>Zurück zum Fenster; Escape tut dasselbe</translation>
    </message>
    <message>
        <source>today at %1</source>
        <translation>heute um %1</translation>
    </message>
    <message>
        <source>%1 is too much: the most here is %2.</source>
        <translation>%1 ist zu viel: höchstens %2 gehen hier.</translation>
    </message>
    <message>
        <source>%1 is too little: the least here is %2.</source>
        <translation>%1 ist zu wenig: mindestens %2 müssen es hier sein.</translation>
    </message>
    <message>
        <source>Where your drawing has them, or where they lie by default</source>
        <translation>Dorthin, wo Ihre Zeichnung sie hat, oder wo sie von sich aus liegen</translation>
    </message>
    <message>
        <source>Inner panel's &amp;top below the neck point</source>
        <translation>Oberkante des Innenstücks unter dem Hals&amp;punkt</translation>
    </message>
    <message>
        <source>They are all m&amp;ine</source>
        <translation>Alle stimmen so (&amp;J)</translation>
    </message>
    <message>
        <source>These lengths are the wearer's, even where they happen to be the sample's</source>
        <translation>Diese Längen sind die der Trägerin, auch wo sie zufällig die des Beispiels sind</translation>
    </message>
    <message>
        <source>The measures are the wearer's</source>
        <translation>Die Maße sind die der Trägerin</translation>
    </message>
    <message>
        <source>The cowl is slashed along the lines of the drawing: %1.</source>
        <translation>Eingeschnitten wird entlang der Linien der Zeichnung: %1.</translation>
    </message>
    <message>
        <source>%1 mm is no reading of a ruler that is %2 mm as designed. Measure it again, from end tick to end tick.</source>
        <translation>%1 mm kann ein Maßstab nicht messen, der mit %2 mm entworfen ist. Messen Sie noch einmal, von Endstrich zu Endstrich.</translation>
    </message>
    <message>
        <source>The %1 is cut already, in part or whole, and this change gives it another shape: what is cut would no longer match. Go back, or go on and cut it anew from fresh cloth.</source>
        <translation>Das Teil „%1“ ist schon geschnitten, ganz oder zum Teil, und diese Änderung gibt ihm eine andere Form: Was geschnitten ist, passt dann nicht mehr. Gehen Sie zurück, oder schneiden Sie es neu aus frischem Stoff.</translation>
    </message>
    <message>
        <source>Back to what is cut</source>
        <translation>Zurück zum Geschnittenen</translation>
    </message>
    <message>
        <source>not calibrated</source>
        <translation>nicht kalibriert</translation>
    </message>
    <message>
        <source>only simulated</source>
        <translation>nur simuliert</translation>
    </message>
    <message>
        <source>front is refused</source>
        <translation>Vorderteil geht nicht</translation>
    </message>
    <message>
        <source>back is refused</source>
        <translation>Rückenteil geht nicht</translation>
    </message>
    <message>
        <source>not chosen</source>
        <translation>nicht gewählt</translation>
    </message>
    <message>
        <source>Some of the body measures are still the sample's, not yours.</source>
        <translation>Einige Körpermaße sind noch die des Beispiels, nicht Ihre.</translation>
    </message>
    <message>
        <source>sample measures</source>
        <translation>Beispielmaße</translation>
    </message>
    <message>
        <source>back is missing</source>
        <translation>Rückenteil fehlt</translation>
    </message>
    <message>
        <source>too narrow</source>
        <translation>zu schmal</translation>
    </message>
    <message>
        <source>no piece yet</source>
        <translation>noch kein Teil</translation>
    </message>
    <message>
        <source>%1 of %2 to cut</source>
        <translation>%1 von %2 offen</translation>
    </message>
    <message>
        <source>refused as it is</source>
        <translation>geht so nicht</translation>
    </message>
    <message>
        <source>The %1 is %2 across, the cloth only %3. Take wider cloth, or make the piece narrower.</source>
        <translation>Das Teil „%1“ ist %2 breit, der Stoff nur %3. Nehmen Sie breiteren Stoff, oder machen Sie das Teil schmaler.</translation>
    </message>
    <message>
        <source>What the top is cut from. Its width decides whether the pieces fit, its colour which lines are seen.</source>
        <translation>Woraus das Oberteil geschnitten wird. Die Breite entscheidet, ob die Teile passen, die Farbe, welche Linien zu sehen sind.</translation>
    </message>
    <message>
        <source>Every piece laid open between the selvedges</source>
        <translation>Alle Teile, aufgeklappt zwischen den Webkanten</translation>
    </message>
    <message>
        <source>The pieces are laid on the cloth here, once there is a base front to draft them from.</source>
        <translation>Hier liegen die Teile auf dem Stoff, sobald es ein Grundvorderteil gibt.</translation>
    </message>
    <message>
        <source>Yes, every piece fits between the selvedges.</source>
        <translation>Ja, alle Teile passen zwischen die Webkanten.</translation>
    </message>
    <message>
        <source>No, not every piece fits.</source>
        <translation>Nein, nicht alle Teile passen.</translation>
    </message>
    <message>
        <source>&lt;b&gt;%1&lt;/b&gt;: %2 across, %3 along</source>
        <translation>&lt;b&gt;%1&lt;/b&gt;: %2 breit, %3 lang</translation>
    </message>
    <message>
        <source>Laid as drawn they take &lt;b&gt;%1&lt;/b&gt; of cloth; closer laying may save some.</source>
        <translation>So gelegt brauchen sie &lt;b&gt;%1&lt;/b&gt; Stoff; enger gelegt vielleicht weniger.</translation>
    </message>
    <message>
        <source>wine</source>
        <translation>weinrot</translation>
    </message>
    <message>
        <source>near to %1</source>
        <translation>ähnlich %1</translation>
    </message>
    <message>
        <source>How far a line may lie from true, mm</source>
        <translation>Wie weit eine Linie danebenliegen kann, mm</translation>
    </message>
    <message>
        <source>95 times in 100 it is nearer than this. A cell is about 10 cm; you stand at the foot.</source>
        <translation>In 95 von 100 Fällen liegt sie näher. Ein Feld ist etwa 10 cm; Sie stehen unten.</translation>
    </message>
    <message>
        <source> On cloth %1 mm thick.</source>
        <translation> Auf %1 mm dickem Stoff.</translation>
    </message>
    <message>
        <source>under %1</source>
        <translation>unter %1</translation>
    </message>
    <message>
        <source>%1 and more</source>
        <translation>%1 und mehr</translation>
    </message>
    <message>
        <source>The hatched band on the table reminds the other hand to stay away from the blade. It is an aid to the eye: it sees no hand and stops no blade.</source>
        <translation>Das schraffierte Band auf dem Tisch erinnert die andere Hand daran, von der Klinge fernzubleiben. Es ist eine Hilfe fürs Auge: Es sieht keine Hand und hält keine Klinge auf.</translation>
    </message>
    <message>
        <source>There is nothing to show: see the message beside it.</source>
        <translation>Es gibt nichts zu zeigen: siehe die Meldung daneben.</translation>
    </message>
    <message>
        <source>No screen here has the %1 pixels that the table was calibrated with. Plug the projector in and switch it on; it is noticed by itself.</source>
        <translation>Kein Bildschirm hier hat die %1 Pixel, mit denen der Tisch kalibriert wurde. Stecken Sie den Projektor an und schalten Sie ihn ein; das wird von selbst bemerkt.</translation>
    </message>
    <message>
        <source>The table is not calibrated yet, so it is not known where the light lands on your mat.</source>
        <translation>Der Tisch ist noch nicht kalibriert; wohin das Licht auf Ihre Matte fällt, ist also nicht bekannt.</translation>
    </message>
    <message>
        <source>To the &amp;cowl</source>
        <translation>Zum &amp;Wasserfall</translation>
    </message>
    <message>
        <source>There is no piece to cut yet: no plain front is chosen that a cowl could be drafted from.</source>
        <translation>Noch gibt es kein Teil: Es ist kein Grundvorderteil gewählt, aus dem sich ein Wasserfall zeichnen ließe.</translation>
    </message>
    <message>
        <source>underarm</source>
        <translation>Achsel</translation>
    </message>
    <message>
        <source>These are a sample body's. Type the wearer's own.</source>
        <translation>Das sind die Maße eines Beispielkörpers. Geben Sie die der Trägerin ein.</translation>
    </message>
    <message>
        <source>Still the sample body's: %1.</source>
        <translation>Noch vom Beispielkörper: %1.</translation>
    </message>
    <message>
        <source>What is sewn after what, which seams meet, what else is cut, and how the front was drafted.</source>
        <translation>Was nach was genäht wird, welche Nähte zusammenkommen, was sonst geschnitten wird, und wie das Vorderteil entstand.</translation>
    </message>
    <message>
        <source>In this order</source>
        <translation>In dieser Reihenfolge</translation>
    </message>
    <message>
        <source>The order of sewing follows from the pieces, once there is a back, too.</source>
        <translation>Die Nähfolge ergibt sich aus den Teilen, sobald es auch ein Rückenteil gibt.</translation>
    </message>
    <message>
        <source>Read the cautions, lay the piece, then cut the first stroke: a ring where to begin, arrows, and a hatched band that reminds the other hand to stay out. All of it is an aid to the eye and stops no blade.</source>
        <translation>Lesen Sie die Vorsichtsregeln, legen Sie das Teil aus, dann schneiden Sie den ersten Zug: ein Ring, wo er beginnt, Pfeile, und ein schraffiertes Band, das die andere Hand daran erinnert, wegzubleiben. All das ist eine Hilfe fürs Auge und hält keine Klinge auf.</translation>
    </message>
    <message>
        <source>The first stroke is cut by light; the space bar goes on, stroke by stroke, and what is cut is kept. At your own table all goes the same way, with your own photographs.</source>
        <translation>Der erste Zug ist nach Licht geschnitten; die Leertaste geht weiter, Zug um Zug, und was geschnitten ist, wird behalten. An Ihrem Tisch geht alles ebenso, mit Ihren eigenen Fotos.</translation>
    </message>
    <message>
        <source>To the first stroke cut by light in two minutes, on a simulated table</source>
        <translation>In zwei Minuten bis zum ersten nach Licht geschnittenen Zug, an einem simulierten Tisch</translation>
    </message>
    <message>
        <source>New here? A tour of two minutes goes from an empty project to the first stroke cut by light, on a simulated table. It needs no projector; you find it in the Help menu, too.</source>
        <translation>Neu hier? Ein Rundgang von zwei Minuten führt vom leeren Projekt bis zum ersten nach Licht geschnittenen Zug, an einem simulierten Tisch. Er braucht keinen Projektor; Sie finden ihn auch im Hilfe-Menü.</translation>
    </message>
    <message>
        <source>Turn the back's facing in along its cowl edge and pin it, as the front's.</source>
        <translation>Den Beleg des Rückenteils an der Wasserfallkante nach innen legen und stecken, wie den des Vorderteils.</translation>
    </message>
    <message>
        <source>Set the clear elastic to the back neckline, stretched a little, and turn it in.</source>
        <translation>Das transparente Gummiband leicht gedehnt auf den hinteren Halsausschnitt setzen und einschlagen.</translation>
    </message>
    <message>
        <source>Sew the facing to the cowl edge, right sides together, turn it inside and pin it along the shoulders.</source>
        <translation>Den Beleg rechts auf rechts an die Wasserfallkante nähen, nach innen wenden und an den Schultern stecken.</translation>
    </message>
    <message>
        <source>Turn the front's facing inside along the cowl edge; do not press the fold. Pin it along the shoulders.</source>
        <translation>Den Beleg des Vorderteils an der Wasserfallkante nach innen legen; den Bruch nicht bügeln. An den Schultern stecken.</translation>
    </message>
    <message>
        <source>Tack up the front's tuck at its drill marks, so that its side seams are as long as the back's.</source>
        <translation>Die Falte des Vorderteils an den Markierungspunkten hochheften, damit seine Seitennähte so lang sind wie die des Rückenteils.</translation>
    </message>
    <message>
        <source>Finish the inner panel's top edge and turn up its hem.</source>
        <translation>Die Oberkante des Innenstücks versäubern und seinen Saum umlegen.</translation>
    </message>
    <message>
        <source>Lay the inner panel under the wrong side of the front, side seams and armholes edge to edge, its hem at the front's drill mark, and baste both there.</source>
        <translation>Das Innenstück unter die linke Seite des Vorderteils legen, Seitennähte und Armlöcher Kante auf Kante, seinen Saum am Markierungspunkt des Vorderteils, und dort beide heften.</translation>
    </message>
    <message>
        <source>Set the sleeves into the open armholes, notch to notch.</source>
        <translation>Die Ärmel in die offenen Armlöcher setzen, Passzeichen auf Passzeichen.</translation>
    </message>
    <message>
        <source>Sew each side seam and sleeve seam in one, notch to notch.</source>
        <translation>Seitennaht und Ärmelnaht je in einem nähen, Passzeichen auf Passzeichen.</translation>
    </message>
    <message>
        <source>Sew the side seams, notch to notch.</source>
        <translation>Die Seitennähte nähen, Passzeichen auf Passzeichen.</translation>
    </message>
    <message>
        <source>Turn the armholes in and stitch them.</source>
        <translation>Die Armlöcher einschlagen und absteppen.</translation>
    </message>
    <message>
        <source>Close each armhole's strip to a ring, set it on, stretched evenly, and finish it.</source>
        <translation>Den Streifen jedes Armlochs zum Ring schließen, gleichmäßig gedehnt ansetzen und fertig nähen.</translation>
    </message>
    <message>
        <source>Mark notches and drill marks on every piece before it is moved.</source>
        <translation>Passzeichen und Markierungspunkte auf jedes Teil übertragen, ehe es bewegt wird.</translation>
    </message>
    <message>
        <source>Sew the shoulders: the back lies between the front and its facing, so that the facing's ends are caught. Turn it out.</source>
        <translation>Die Schultern nähen: Das Rückenteil liegt zwischen Vorderteil und Beleg, so dass die Enden des Belegs mitgefasst werden. Wenden.</translation>
    </message>
    <message>
        <source>Turn up the hem. Try the top on, let the cowl fall, and tack its facing at the shoulders if it wants to roll out.</source>
        <translation>Den Saum umlegen. Das Oberteil anprobieren, den Wasserfall fallen lassen, und den Beleg an den Schultern anheften, wenn er herausrollen will.</translation>
    </message>
    <message>
        <source>Stopped; nothing is changed. What was begun may run on unseen for some seconds; you can go on working.</source>
        <translation>Angehalten; nichts ist geändert. Was begonnen war, läuft vielleicht noch einige Sekunden ungesehen weiter; Sie können weiterarbeiten.</translation>
    </message>
    <message>
        <source>&lt;b&gt;Calibrated %1.&lt;/b&gt;</source>
        <translation>&lt;b&gt;Kalibriert %1.&lt;/b&gt;</translation>
    </message>
    <message>
        <source>On this project's cloth a line lies within %1 mm of true in the middle of the light and within %2 mm everywhere in it, 95 times in 100.</source>
        <translation>Auf dem Stoff dieses Projekts liegt eine Linie in der Mitte des Lichts höchstens %1 mm neben der wahren, überall darin höchstens %2 mm, in 95 von 100 Fällen.</translation>
    </message>
    <message>
        <source>Seams and their order follow once there is a base back, too.</source>
        <translation>Nähte und ihre Folge ergeben sich, sobald es auch ein Grundrückenteil gibt.</translation>
    </message>
    <message>
        <source>after the back</source>
        <translation>nach dem Rückenteil</translation>
    </message>
    <message>
        <source>%1 cannot be read. Check that it is still there.</source>
        <translation>%1 lässt sich nicht lesen. Prüfen Sie, ob die Datei noch da ist.</translation>
    </message>
    <message>
        <source>%1 to %2</source>
        <translation>%1 bis %2</translation>
    </message>
    <message>
        <source>%1: sheet seen</source>
        <translation>%1: Blatt da</translation>
    </message>
    <message>
        <source>%1: no sheet</source>
        <translation>%1: kein Blatt</translation>
    </message>
    <message>
        <source>%1: drawn %2, measured %3. It agrees: off by %4, within the %5 that tape and map leave open.</source>
        <translation>%1: gezeichnet %2, gemessen %3. Es stimmt: %4 Unterschied, innerhalb der %5, die Maßband und Karte offenlassen.</translation>
    </message>
    <message>
        <source>%1: drawn %2, measured %3. It does not agree: off by %4, and tape and map leave open %5.</source>
        <translation>%1: gezeichnet %2, gemessen %3. Es stimmt nicht: %4 Unterschied, und Maßband und Karte lassen %5 offen.</translation>
    </message>
    <message>
        <source>&amp;5  Check</source>
        <translation>&amp;5  Prüfen</translation>
    </message>
    <message>
        <source>&amp;6  Watch</source>
        <translation>&amp;6  Wachen</translation>
    </message>
    <message>
        <source>&amp;Judge it</source>
        <translation>Be&amp;urteilen</translation>
    </message>
    <message>
        <source>&amp;Keep as a file …</source>
        <translation>Als Datei &amp;sichern …</translation>
    </message>
    <message>
        <source>&amp;Light the figure</source>
        <translation>Figur be&amp;leuchten</translation>
    </message>
    <message>
        <source>&amp;Look where it stands</source>
        <translation>&amp;Nachsehen, wo sie steht</translation>
    </message>
    <message>
        <source>&amp;Measure on the simulated table</source>
        <translation>Am simulierten Tisch &amp;messen</translation>
    </message>
    <message>
        <source>&amp;Next: check it by hand</source>
        <translation>&amp;Weiter: von Hand prüfen</translation>
    </message>
    <message>
        <source>&amp;Use photographs from files</source>
        <translation>F&amp;otos aus Dateien nehmen</translation>
    </message>
    <message>
        <source>&amp;With a grid</source>
        <translation>Mit &amp;Raster</translation>
    </message>
    <message>
        <source>A camera file that goes with this calibration</source>
        <translation>Eine Kameradatei, die zu dieser Kalibrierung gehört</translation>
    </message>
    <message>
        <source>A camera file, as the command line reads it</source>
        <translation>Eine Kameradatei, wie die Befehlszeile sie liest</translation>
    </message>
    <message>
        <source>A camera on a ca&amp;ble …</source>
        <translation>Eine Kamera am &amp;Kabel …</translation>
    </message>
    <message>
        <source>A camera on a cable</source>
        <translation>Eine Kamera am Kabel</translation>
    </message>
    <message>
        <source>A camera that stays</source>
        <translation>Eine Kamera, die bleibt</translation>
    </message>
    <message>
        <source>A camera that watches</source>
        <translation>Eine Kamera, die wacht</translation>
    </message>
    <message>
        <source>A device such as /dev/video2, a film's file, or an address with ://</source>
        <translation>Ein Gerät wie /dev/video2, die Datei eines Films oder eine Adresse mit ://</translation>
    </message>
    <message>
        <source>A grid with it</source>
        <translation>Ein Raster dazu</translation>
    </message>
    <message>
        <source>A look before cutting</source>
        <translation>Ein Blick vor dem Schneiden</translation>
    </message>
    <message>
        <source>A page to print and to cut out, at 100 %</source>
        <translation>Eine Seite zum Drucken und Ausschneiden, mit 100 %</translation>
    </message>
    <message>
        <source>A short one when it sees something ahead of the blade (Ctrl+U)</source>
        <translation>Ein kurzer, wenn sie etwas vor der Klinge sieht (Strg+U)</translation>
    </message>
    <message>
        <source>%1, by tape (&amp;X)</source>
        <translation>%1, mit dem Maßband (&amp;X)</translation>
    </message>
    <message>
        <source>Bump the projector</source>
        <translation>Projektor anstoßen</translation>
    </message>
    <message>
        <source>Ca&amp;mera</source>
        <translation>Ka&amp;mera</translation>
    </message>
    <message>
        <source>Calibrate first: a camera's place is told in millimetres of the calibrated mat.</source>
        <translation>Erst kalibrieren: Wo eine Kamera steht, wird in Millimetern der kalibrierten Matte gesagt.</translation>
    </message>
    <message>
        <source>Camera files (*.json)</source>
        <translation>Kameradateien (*.json)</translation>
    </message>
    <message>
        <source>Check %1 by hand</source>
        <translation>%1 von Hand prüfen</translation>
    </message>
    <message>
        <source>Check by hand</source>
        <translation>Von Hand prüfen</translation>
    </message>
    <message>
        <source>Choose a camera</source>
        <translation>Kamera wählen</translation>
    </message>
    <message>
        <source>Compare distances of light with a tape</source>
        <translation>Abstände im Licht mit dem Maßband vergleichen</translation>
    </message>
    <message>
        <source>Compares it with what the map says and how sure that is</source>
        <translation>Vergleicht mit dem, was die Karte sagt, und damit, wie sicher das ist</translation>
    </message>
    <message>
        <source>Crosses of light at known distances, for a tape.</source>
        <translation>Kreuze aus Licht in bekannten Abständen, für ein Maßband.</translation>
    </message>
    <message>
        <source>Dev&amp;ice, film or address</source>
        <translation>G&amp;erät, Film oder Adresse</translation>
    </message>
    <message>
        <source>From a phone, or another camera</source>
        <translation>Von einem Telefon oder einer anderen Kamera</translation>
    </message>
    <message>
        <source>From the middle of one cross to the middle of the other</source>
        <translation>Von der Mitte des einen Kreuzes zur Mitte des anderen</translation>
    </message>
    <message>
        <source>Full screen on the projector, on the bare mat. Escape there ends it</source>
        <translation>Auf dem ganzen Projektor, auf der bloßen Matte. Escape dort beendet es</translation>
    </message>
    <message>
        <source>How the camera is held</source>
        <translation>Wie die Kamera gehalten wird</translation>
    </message>
    <message>
        <source>I ca&amp;rry it</source>
        <translation>Ich t&amp;rage sie</translation>
    </message>
    <message>
        <source>In Table, where a camera that stays finds out where it stands (Ctrl+Shift+G)</source>
        <translation>Unter Tisch, wo eine Kamera, die bleibt, herausfindet, wo sie steht (Strg+Umschalt+G)</translation>
    </message>
    <message>
        <source>It can notice that mat, projector or camera were moved while you cut, and look ahead of the blade. Glue eight or more tags around the mat's edge, where no blade goes, and fix the camera so that it sees them and the whole light.</source>
        <translation>Sie kann bemerken, dass Matte, Projektor oder Kamera beim Schneiden verrückt wurden, und vor die Klinge schauen. Kleben Sie acht oder mehr Marken um den Rand der Matte, wo keine Klinge geht, und befestigen Sie die Kamera so, dass sie die Marken und das ganze Licht sieht.</translation>
    </message>
    <message>
        <source>It is kept in the project. To use it with the command line, or with another project of the same calibration, keep it as a file.</source>
        <translation>Es steht im Projekt. Für die Befehlszeile oder ein anderes Projekt derselben Kalibrierung sichern Sie es als Datei.</translation>
    </message>
    <message>
        <source>It is known where it stands: %1 cm above the mat. %2 tags were seen. It can be asked to watch where you cut.</source>
        <translation>Es ist bekannt, wo sie steht: %1 cm über der Matte. %2 Marken waren zu sehen. Beim Schneiden kann sie wachen.</translation>
    </message>
    <message>
        <source>It is not known yet where it stands, so it cannot watch.</source>
        <translation>Noch ist nicht bekannt, wo sie steht; so kann sie nicht wachen.</translation>
    </message>
    <message>
        <source>It is not said which camera looks at the table. Choose it in the list.</source>
        <translation>Es ist nicht gesagt, welche Kamera auf den Tisch sieht. Wählen Sie sie in der Liste.</translation>
    </message>
    <message>
        <source>It is not said which screen the projector is. Choose it where the sheets are laid.</source>
        <translation>Es ist nicht gesagt, welcher Bildschirm der Projektor ist. Wählen Sie ihn dort, wo die Blätter gelegt werden.</translation>
    </message>
    <message>
        <source>It is not typed in yet what the tape reads. Measure, and type it into the field.</source>
        <translation>Noch ist nicht eingetippt, was das Maßband zeigt. Messen Sie, und tippen Sie es in das Feld.</translation>
    </message>
    <message>
        <source>It learns the table, or finds it again after a move; R does the same (Ctrl+R)</source>
        <translation>Sie lernt den Tisch oder findet ihn nach einem Stoß wieder; R tut dasselbe (Strg+R)</translation>
    </message>
    <message>
        <source>It sta&amp;ys</source>
        <translation>Sie bleibt &amp;stehen</translation>
    </message>
    <message>
        <source>It stands on something and sees all from one side</source>
        <translation>Sie steht auf etwas und sieht alles von einer Seite</translation>
    </message>
    <message>
        <source>It takes the photographs by itself, with hints</source>
        <translation>Sie macht die Fotos von selbst, mit Hinweisen</translation>
    </message>
    <message>
        <source>It watches as soon as the lines are shown on the projector.</source>
        <translation>Sie wacht, sobald die Linien auf dem Projektor zu sehen sind.</translation>
    </message>
    <message>
        <source>Keep the camera's place</source>
        <translation>Platz der Kamera sichern</translation>
    </message>
    <message>
        <source>Laid straight on the bare mat, read to half a millimetre or a 32nd of an inch</source>
        <translation>Gerade auf die bloße Matte gelegt, auf einen halben Millimeter oder ein 32stel Zoll abgelesen</translation>
    </message>
    <message>
        <source>Lays a tape there, between the two crosses of light</source>
        <translation>Legt dort ein Maßband zwischen die beiden Kreuze</translation>
    </message>
    <message>
        <source>Let a camera that stays find where it stands</source>
        <translation>Eine Kamera, die bleibt, ihren Platz finden lassen</translation>
    </message>
    <message>
        <source>Let the camera watch</source>
        <translation>Kamera wachen lassen</translation>
    </message>
    <message>
        <source>Li&amp;ght two crosses</source>
        <translation>Zwei Kreuze zei&amp;gen</translation>
    </message>
    <message>
        <source>Lines every centimetre, or every inch, over the whole light</source>
        <translation>Linien im Abstand eines Zentimeters oder eines Zolls, über das ganze Licht</translation>
    </message>
    <message>
        <source>Lines of light are easily believed. Lay a steel tape on the bare mat, straight from the middle of one cross to the middle of another, and type in what it reads. A tape sees a changed size or shape; that all lines slid or turned together it does not see.</source>
        <translation>Linien aus Licht glaubt man leicht. Legen Sie ein Stahlmaßband auf die bloße Matte, gerade von der Mitte eines Kreuzes zur Mitte eines anderen, und tippen Sie ein, was es zeigt. Ein Maßband sieht eine andere Größe oder Form; dass alle Linien zusammen gerutscht oder gedreht sind, sieht es nicht.</translation>
    </message>
    <message>
        <source>Meas&amp;ured from</source>
        <translation>Gemessen v&amp;on</translation>
    </message>
    <message>
        <source>Mend the s&amp;cale by the tape</source>
        <translation>Maß&amp;stab nach dem Maßband richten</translation>
    </message>
    <message>
        <source>Mend the scale by the tape</source>
        <translation>Maßstab nach dem Maßband richten</translation>
    </message>
    <message>
        <source>No &amp;grid</source>
        <translation>&amp;Kein Raster</translation>
    </message>
    <message>
        <source>No camera's place is known for this calibration, so nobody watches. Check two crosses before cutting.</source>
        <translation>Zu dieser Kalibrierung ist kein Platz einer Kamera bekannt; niemand wacht. Prüfen Sie vor dem Schneiden zwei Kreuze.</translation>
    </message>
    <message>
        <source>No picture comes from the camera.</source>
        <translation>Von der Kamera kommt kein Bild.</translation>
    </message>
    <message>
        <source>Nobody watches the table.</source>
        <translation>Niemand wacht über den Tisch.</translation>
    </message>
    <message>
        <source>Nobody watches: the camera sends no pictures.</source>
        <translation>Niemand wacht: Die Kamera schickt keine Bilder.</translation>
    </message>
    <message>
        <source>On the simulated table, to see what happens then (Ctrl+B)</source>
        <translation>Am simulierten Tisch, um zu sehen, was dann geschieht (Strg+B)</translation>
    </message>
    <message>
        <source>Opens the camera and shows the target on the projector. Escape there ends it</source>
        <translation>Öffnet die Kamera und zeigt das gewürfelte Bild auf dem Projektor. Escape dort beendet es</translation>
    </message>
    <message>
        <source>Photograph and calibrate again</source>
        <translation>Neu fotografieren und kalibrieren</translation>
    </message>
    <message>
        <source>Photographs from files instead</source>
        <translation>Stattdessen Fotos aus Dateien</translation>
    </message>
    <message>
        <source>Photographs from two sides; you are told when to go on</source>
        <translation>Fotos von zwei Seiten; es wird gesagt, wann es weitergeht</translation>
    </message>
    <message>
        <source>Right after calibrating, the sheets still lying there. Target, plain light and darkness are shown in turn; stand clear for some seconds</source>
        <translation>Gleich nach dem Kalibrieren, wenn die Blätter noch liegen. Gewürfeltes Bild, reines Licht und Dunkel kommen nacheinander; treten Sie einige Sekunden zurück</translation>
    </message>
    <message>
        <source>Save the edge &amp;tags as PDF …</source>
        <translation>&amp;Randmarken als PDF sichern …</translation>
    </message>
    <message>
        <source>Save the edge tags</source>
        <translation>Randmarken sichern</translation>
    </message>
    <message>
        <source>Something was moved, and the lines are taken away.</source>
        <translation>Etwas wurde verrückt; die Linien sind weggenommen.</translation>
    </message>
    <message>
        <source>Sto&amp;p the camera</source>
        <translation>Kamera anha&amp;lten</translation>
    </message>
    <message>
        <source>Stop the camera</source>
        <translation>Kamera anhalten</translation>
    </message>
    <message>
        <source>Take a camera's place from a file</source>
        <translation>Platz einer Kamera aus einer Datei nehmen</translation>
    </message>
    <message>
        <source>Take fr&amp;om a file …</source>
        <translation>A&amp;us Datei nehmen …</translation>
    </message>
    <message>
        <source>Take the &amp;photographs</source>
        <translation>&amp;Fotos machen</translation>
    </message>
    <message>
        <source>Take the simulated table</source>
        <translation>Simulierten Tisch nehmen</translation>
    </message>
    <message>
        <source>Target and plain light are shown in turn, and each photograph is taken by itself when nothing moves. What is amiss is said under the picture.</source>
        <translation>Gewürfeltes Bild und reines Licht kommen nacheinander, und jedes Foto entsteht von selbst, wenn sich nichts bewegt. Was fehlt, steht unter dem Bild.</translation>
    </message>
    <message>
        <source>The camera learns the table. Stand clear for some seconds.</source>
        <translation>Die Kamera lernt den Tisch. Treten Sie einige Sekunden zurück.</translation>
    </message>
    <message>
        <source>The camera looks again</source>
        <translation>Kamera noch einmal schauen lassen</translation>
    </message>
    <message>
        <source>The camera on a cable that looks at the table. They are counted by the system, from 0 on</source>
        <translation>Die Kamera am Kabel, die auf den Tisch sieht. Das System zählt sie von 0 an</translation>
    </message>
    <message>
        <source>The camera sees too little to tell.</source>
        <translation>Die Kamera sieht zu wenig, um etwas zu sagen.</translation>
    </message>
    <message>
        <source>The camera stands still, and sees the whole light and the tags at the mat's edge.</source>
        <translation>Die Kamera steht still und sieht das ganze Licht und die Marken am Rand der Matte.</translation>
    </message>
    <message>
        <source>The camera watches the table.</source>
        <translation>Die Kamera wacht über den Tisch.</translation>
    </message>
    <message>
        <source>The crosses, and a square with its diagonals</source>
        <translation>Die Kreuze und ein Quadrat mit seinen Diagonalen</translation>
    </message>
    <message>
        <source>The folder %1 for the photographs cannot be made. Make room on the disk.</source>
        <translation>Der Ordner %1 für die Fotos lässt sich nicht anlegen. Schaffen Sie Platz auf dem Datenträger.</translation>
    </message>
    <message>
        <source>The light does not lie where the calibration says: from %1 the tape reads otherwise. Measure again; if it stays so, calibrate again before cutting. Where only the size is in doubt, because the rulers were not measured, the tape can mend it.</source>
        <translation>Das Licht liegt nicht, wo die Kalibrierung sagt: Von %1 zeigt das Maßband anderes. Messen Sie noch einmal; bleibt es so, kalibrieren Sie vor dem Schneiden neu. Ist nur die Größe fraglich, weil die Lineale nicht gemessen wurden, kann das Maßband sie richten.</translation>
    </message>
    <message>
        <source>The scale was mended by %1 %. It is known within %2 % now.</source>
        <translation>Der Maßstab wurde um %1 % gerichtet. Er ist nun auf %2 % bekannt.</translation>
    </message>
    <message>
        <source>Only one of a sheet's two rulers is typed in, and the scale needs both. Measure the other as well, or set this one to 0 too.</source>
        <translation>Nur eines der beiden Lineale eines Blatts ist eingetragen, und der Maßstab braucht beide. Messen Sie auch das andere, oder setzen Sie dieses ebenfalls auf 0.</translation>
    </message>
    <message>
        <source>To the rulers</source>
        <translation>Zu den Linealen</translation>
    </message>
    <message>
        <source>The scale was mended by a tape. It is known within %1 % now.</source>
        <translation>Der Maßstab wurde mit dem Maßband gerichtet. Er ist nun auf %1 % bekannt.</translation>
    </message>
    <message>
        <source>Light the figure anew and measure %1 once more: all light lies otherwise now, and readings of before mend nothing any more.</source>
        <translation>Lassen Sie die Figur neu leuchten und messen Sie %1 noch einmal: Alles Licht liegt nun anders, und Messungen von vorher richten nichts mehr.</translation>
    </message>
    <message>
        <source>Before the table was mended: %1</source>
        <translation>Bevor der Tisch gerichtet wurde: %1</translation>
    </message>
    <message>
        <source>The simulated table's camera does not see your table. Choose another one.</source>
        <translation>Die Kamera des simulierten Tisches sieht Ihren Tisch nicht. Wählen Sie eine andere.</translation>
    </message>
    <message>
        <source>The table is not learnt yet. Begin to cut, lay the cloth clear of the marks of light, and stand clear.</source>
        <translation>Der Tisch ist noch nicht gelernt. Beginnen Sie zu schneiden, legen Sie den Stoff neben die Lichtmarken, und treten Sie zurück.</translation>
    </message>
    <message>
        <source>The tape rea&amp;ds</source>
        <translation>Maßband &amp;zeigt</translation>
    </message>
    <message>
        <source>This calibration is of the simulated table, which only its own camera sees. Choose that one, or calibrate your own table.</source>
        <translation>Diese Kalibrierung ist vom simulierten Tisch, den nur seine eigene Kamera sieht. Wählen Sie diese, oder kalibrieren Sie Ihren Tisch.</translation>
    </message>
    <message>
        <source>To the camera's place …</source>
        <translation>Zum Platz der Kamera …</translation>
    </message>
    <message>
        <source>To the table</source>
        <translation>Zum Tisch</translation>
    </message>
    <message>
        <source>Waiting for the camera …</source>
        <translation>Warten auf die Kamera …</translation>
    </message>
    <message>
        <source>What the camera sees</source>
        <translation>Was die Kamera sieht</translation>
    </message>
    <message>
        <source>Where the camera stands</source>
        <translation>Wo die Kamera steht</translation>
    </message>
    <message>
        <source>Where the rulers were not measured: all distances are stretched to what the tape says, and the calibration knows its scale better. Can be undone</source>
        <translation>Wo die Lineale nicht gemessen wurden: Alle Abstände werden auf das gestreckt, was das Maßband sagt, und die Kalibrierung kennt ihren Maßstab besser. Lässt sich zurücknehmen</translation>
    </message>
    <message>
        <source>Whether table, projector or camera are moved, and what lies ahead of the blade. An aid that misses things: keep your other hand out of the blade's way (Ctrl+G)</source>
        <translation>Ob Tisch, Projektor oder Kamera verrückt werden und was vor der Klinge liegt. Eine Hilfe, der manches entgeht: Halten Sie die andere Hand aus dem Weg der Klinge (Strg+G)</translation>
    </message>
    <message>
        <source>With a sound</source>
        <translation>Mit einem Ton</translation>
    </message>
    <message>
        <source>Working out where it stands …</source>
        <translation>Es wird berechnet, wo sie steht …</translation>
    </message>
    <message>
        <source>a device, film or address</source>
        <translation>ein Gerät, ein Film oder eine Adresse</translation>
    </message>
    <message>
        <source>camera %1 of this machine</source>
        <translation>Kamera %1 dieses Rechners</translation>
    </message>
    <message>
        <source>camera.json</source>
        <translation>kamera.json</translation>
    </message>
    <message>
        <source>left</source>
        <translation>links</translation>
    </message>
    <message>
        <source>middle</source>
        <translation>Mitte</translation>
    </message>
    <message>
        <source>none yet</source>
        <translation>noch keine</translation>
    </message>
    <message>
        <source>right</source>
        <translation>rechts</translation>
    </message>
    <message>
        <source>tags.pdf</source>
        <translation>marken.pdf</translation>
    </message>
    <message>
        <source>the simulated table's own</source>
        <translation>die des simulierten Tisches</translation>
    </message>
    <message>
        <source>Something moves. Stand clear of the light.</source>
        <translation>Etwas bewegt sich. Treten Sie aus dem Licht.</translation>
    </message>
    <message>
        <source>Stand clear of the light for some seconds.</source>
        <translation>Treten Sie einige Sekunden aus dem Licht zurück.</translation>
    </message>
</context>
</TS>
