<?xml version="1.0" encoding="utf-8"?>
<!DOCTYPE TS>
<TS version="2.1" language="de" sourcelanguage="en">
<context>
    <name>Rooms</name>
    <message>
        <source>The sheets cover only the %1 of the light: lay at least one at the %2 and photograph again.</source>
        <translation>Die Blätter bedecken vom Licht nur %1: Legen Sie mindestens eines %2 aus und fotografieren Sie noch einmal.</translation>
    </message>
    <message>
        <source>left third</source>
        <translation>das linke Drittel</translation>
    </message>
    <message>
        <source>right third</source>
        <translation>das rechte Drittel</translation>
    </message>
    <message>
        <source>near third</source>
        <translation>das vordere Drittel</translation>
    </message>
    <message>
        <source>far third</source>
        <translation>das hintere Drittel</translation>
    </message>
    <message>
        <source>left half</source>
        <translation>die linke Hälfte</translation>
    </message>
    <message>
        <source>right half</source>
        <translation>die rechte Hälfte</translation>
    </message>
    <message>
        <source>near half</source>
        <translation>die vordere Hälfte</translation>
    </message>
    <message>
        <source>far half</source>
        <translation>die hintere Hälfte</translation>
    </message>
    <message>
        <source>left</source>
        <translation>links</translation>
    </message>
    <message>
        <source>right</source>
        <translation>rechts</translation>
    </message>
    <message>
        <source>near</source>
        <translation>vorn</translation>
    </message>
    <message>
        <source>far</source>
        <translation>hinten</translation>
    </message>
    <message>
        <source>Only one photograph could be used.</source>
        <translation>Nur ein Foto war brauchbar.</translation>
    </message>
    <message>
        <source>Take two more from other sides, with all sheets in view.</source>
        <translation>Machen Sie noch zwei von anderen Seiten, alle Blätter im Bild.</translation>
    </message>
    <message>
        <source>Only %1 sheets are seen.</source>
        <translation>Nur %1 Blätter sind zu sehen.</translation>
    </message>
    <message>
        <source>Lay four, spread towards the corners of the lit area, and photograph again.</source>
        <translation>Legen Sie vier aus, gegen die Ecken des Lichts hin, und fotografieren Sie noch einmal.</translation>
    </message>
    <message>
        <source>Spread the sheets towards the corners of the lit area, hold the camera higher and at a slant, and take two more photographs of the target.</source>
        <translation>Legen Sie die Blätter weiter gegen die Ecken des Lichts hin, halten Sie die Kamera höher und schräg, und machen Sie noch zwei Fotos vom Zielbild.</translation>
    </message>
    <message>
        <source>The sheets do not lie as one flat, unmoved table in all photographs (corners miss by %1 pixels).</source>
        <translation>Die Blätter liegen nicht in allen Fotos als ein ebener, unverrückter Tisch (Ecken liegen %1 Pixel daneben).</translation>
    </message>
    <message>
        <source>Lay them flat, do not touch them between photographs, hold the camera still, and photograph again.</source>
        <translation>Legen Sie sie flach hin, berühren Sie sie zwischen den Fotos nicht, halten Sie die Kamera still, und fotografieren Sie noch einmal.</translation>
    </message>
    <message>
        <source>The projected target does not agree between photographs (corners miss by %1 mm).</source>
        <translation>Das projizierte Zielbild stimmt zwischen den Fotos nicht überein (Ecken liegen %1 mm daneben).</translation>
    </message>
    <message>
        <source>Let projector and table stand still while you photograph, and do it again.</source>
        <translation>Lassen Sie Projektor und Tisch stehen, während Sie fotografieren, und fangen Sie noch einmal an.</translation>
    </message>
    <message>
        <source>These photographs fix the table only within %1 mm, 95 times in 100; it must be %2 for lines never to be off by %3 mm.</source>
        <translation>Diese Fotos legen den Tisch nur auf %1 mm genau fest, in 95 von 100 Fällen; es müssen %2 sein, damit Linien nie um %3 mm danebenliegen.</translation>
    </message>
    <message>
        <source>The scale is known only within %1 %, which leaves %2 mm, 95 times in 100; it must be %3 for lines never to be off by %4 mm.</source>
        <translation>Der Maßstab ist nur auf %1 % bekannt; das lässt in 95 von 100 Fällen %2 mm offen; es müssen %3 sein, damit Linien nie um %4 mm danebenliegen.</translation>
    </message>
    <message>
        <source>Measure both rulers, or lay a tape between two far sheets' crosses.</source>
        <translation>Messen Sie beide Lineale, oder legen Sie ein Band zwischen die Kreuze zweier entfernter Blätter.</translation>
    </message>
    <message>
        <source>Nothing but the printer's word fixes the scale: lines may be off by %1 mm at the edges.</source>
        <translation>Den Maßstab sagt nur der Drucker: Linien können am Rand %1 mm danebenliegen.</translation>
    </message>
    <message>
        <source>Measure the two rulers on a sheet and calibrate again.</source>
        <translation>Messen Sie die beiden Lineale eines Blattes und kalibrieren Sie neu.</translation>
    </message>
    <message>
        <source>The sheets were printed at %1 %.</source>
        <translation>Die Blätter wurden mit %1 % gedruckt.</translation>
    </message>
    <message>
        <source>That is allowed for, but print at 100 % next time.</source>
        <translation>Das ist eingerechnet; drucken Sie nächstes Mal mit 100 %.</translation>
    </message>
    <message>
        <source>No photograph shows the table under plain light, so a mat's print may disturb the target.</source>
        <translation>Kein Foto zeigt den Tisch unter reinem Licht; der Aufdruck einer Matte kann das Zielbild stören.</translation>
    </message>
    <message>
        <source>Add one for a better result.</source>
        <translation>Eines mehr gibt ein besseres Ergebnis.</translation>
    </message>
    <message>
        <source>Photographs used: %1 (%2 of the target); sheets: %3.</source>
        <translation>Benutzte Fotos: %1 (%2 vom Zielbild); Blätter: %3.</translation>
    </message>
    <message>
        <source>Lit area: about %1 x %2 mm.</source>
        <translation>Beleuchtete Fläche: etwa %1 x %2 mm.</translation>
    </message>
    <message>
        <source>Paper corners fit within %1 pixels, corners in light within %2 mm (rms).</source>
        <translation>Ecken auf Papier passen auf %1 Pixel, Ecken aus Licht auf %2 mm (Effektivwert).</translation>
    </message>
    <message>
        <source>Print scale: %1 % across, %2 % down, from the %3.</source>
        <translation>Druckmaßstab: %1 % quer, %2 % längs, nach: %3.</translation>
    </message>
    <message>
        <source>page</source>
        <translation>Seitengröße</translation>
    </message>
    <message>
        <source>rulers</source>
        <translation>Lineale</translation>
    </message>
    <message>
        <source>span</source>
        <translation>Band</translation>
    </message>
    <message>
        <source>rulers and span</source>
        <translation>Lineale und Band</translation>
    </message>
    <message>
        <source>page and tape</source>
        <translation>Seitengröße und Maßband</translation>
    </message>
    <message>
        <source>rulers and tape</source>
        <translation>Lineale und Maßband</translation>
    </message>
    <message>
        <source>Lines land within %1 mm of true, 95 times in 100, at the worst place of the lit area; %2 mm if the scale is exact.</source>
        <translation>An der schlechtesten Stelle des Lichts liegen Linien in 95 von 100 Fällen höchstens %1 mm daneben; %2 mm, wenn der Maßstab genau stimmt.</translation>
    </message>
    <message>
        <source>Over the light, its far edge first, mm:</source>
        <translation>Über das Licht verteilt, die hintere Kante zuerst, mm:</translation>
    </message>
    <message>
        <source>On cloth 1 mm thick within %1 mm, on 5 mm within %2 mm.</source>
        <translation>Auf 1 mm dickem Stoff höchstens %1 mm, auf 5 mm höchstens %2 mm.</translation>
    </message>
    <message>
        <source>How the light slants is known too little for thick cloth: on 5 mm it alone may cost %1 mm.</source>
        <translation>Wie schräg das Licht fällt, ist für dicken Stoff zu wenig bekannt: Auf 5 mm kann allein das %1 mm kosten.</translation>
    </message>
    <message>
        <source>Measure the height of the projector's lens (--lamp-height), or lay one more sheet on a board (--raised), and calibrate again.</source>
        <translation>Messen Sie die Höhe der Projektorlinse (--lamp-height) oder legen Sie ein weiteres Blatt auf ein Brett (--raised), und kalibrieren Sie noch einmal.</translation>
    </message>
    <message>
        <source>Sheet %1 moved between photographs: in %2 it lies %3 mm from its place in the others.</source>
        <translation>Blatt %1 ist zwischen den Fotos verrutscht: In %2 liegt es %3 mm neben seinem Platz in den anderen.</translation>
    </message>
    <message>
        <source>Sheet %1 is printed at another scale than the others: it is %2 % larger.</source>
        <translation>Blatt %1 ist in anderem Maßstab gedruckt als die übrigen: Es ist %2 % größer.</translation>
    </message>
    <message>
        <source>Sheet %1 is printed at another scale than the others: it is %2 % smaller.</source>
        <translation>Blatt %1 ist in anderem Maßstab gedruckt als die übrigen: Es ist %2 % kleiner.</translation>
    </message>
    <message>
        <source>A corner of sheet %1 is lifted or curled: it stands up a fraction of a mm.</source>
        <translation>Eine Ecke von Blatt %1 ist angehoben oder gewölbt: Sie steht einen Bruchteil eines mm hoch.</translation>
    </message>
    <message>
        <source>A corner of sheet %1 is lifted or curled: it stands up about %2 mm.</source>
        <translation>Eine Ecke von Blatt %1 ist angehoben oder gewölbt: Sie steht etwa %2 mm hoch.</translation>
    </message>
    <message>
        <source>The projector's picture moved between photographs: in %1 it lies %2 mm from where the others have it.</source>
        <translation>Das Bild des Projektors hat sich zwischen den Fotos verschoben: In %1 liegt es %2 mm neben dem der anderen.</translation>
    </message>
    <message>
        <source>That was left out.</source>
        <translation>Das wurde weggelassen.</translation>
    </message>
    <message>
        <source>Nothing is left: lay the sheets flat and photograph again.</source>
        <translation>Es bleibt nichts übrig: Legen Sie die Blätter flach hin und fotografieren Sie noch einmal.</translation>
    </message>
    <message>
        <source>Print all sheets in one go at 100 %, and photograph again.</source>
        <translation>Drucken Sie alle Blätter auf einmal mit 100 % und fotografieren Sie noch einmal.</translation>
    </message>
    <message>
        <source>Let projector, table and cloth stand still, and take all photographs again.</source>
        <translation>Lassen Sie Projektor, Tisch und Stoff stehen, und machen Sie alle Fotos neu.</translation>
    </message>
    <message>
        <source>The rulers are given as %1 and %2 mm, but they are about 240 and 180 mm long.</source>
        <translation>Für die Lineale sind %1 und %2 mm angegeben, sie sind aber etwa 240 und 180 mm lang.</translation>
    </message>
    <message>
        <source>Measure both from end tick to end tick, the long one first.</source>
        <translation>Messen Sie beide vom ersten bis zum letzten Strich, das lange zuerst.</translation>
    </message>
    <message>
        <source>The rulers are given as %1 and %2 mm, but the sheets in the photographs say that their lengths go together otherwise, for example %3 and %4 mm.</source>
        <translation>Für die Lineale sind %1 und %2 mm angegeben, nach den Fotos gehören ihre Längen aber anders zusammen, zum Beispiel %3 und %4 mm.</translation>
    </message>
    <message>
        <source>Measure both again, end tick to end tick, on a sheet that lay on the table.</source>
        <translation>Messen Sie beide neu, vom ersten bis zum letzten Strich, auf einem Blatt, das auf dem Tisch lag.</translation>
    </message>
    <message>
        <source>The tape from one sheet to another is given as %1 mm, but all else says %2 mm.</source>
        <translation>Für das Band von Blatt zu Blatt sind %1 mm angegeben, alles andere sagt %2 mm.</translation>
    </message>
    <message>
        <source>Measure again between the centre crosses, and check the sheets' numbers.</source>
        <translation>Messen Sie noch einmal zwischen den Mittelkreuzen und prüfen Sie die Nummern der Blätter.</translation>
    </message>
    <message>
        <source>The projector's lens is said to be %1 mm above the mat.</source>
        <translation>Die Projektorlinse soll %1 mm über der Matte sein.</translation>
    </message>
    <message>
        <source>Measure straight up from the mat to the middle of the lens.</source>
        <translation>Messen Sie von der Matte gerade hoch bis zur Mitte der Linse.</translation>
    </message>
    <message>
        <source>Measure straight up from the mat to the middle of the lens, or leave it out.</source>
        <translation>Messen Sie von der Matte gerade hoch bis zur Mitte der Linse, oder lassen Sie die Angabe weg.</translation>
    </message>
    <message>
        <source>The lens is given as %1 mm above the mat, but the photographs say about %2 mm and do not go together with the other.</source>
        <translation>Für die Linse sind %1 mm über der Matte angegeben, die Fotos sagen etwa %2 mm und passen nicht zu der Angabe.</translation>
    </message>
    <message>
        <source>A tape was laid from sheet %1, but that sheet is not seen in the photographs.</source>
        <translation>Ein Band wurde von Blatt %1 aus gelegt, aber dieses Blatt ist auf den Fotos nicht zu sehen.</translation>
    </message>
    <message>
        <source>Check the number printed at its top.</source>
        <translation>Prüfen Sie die oben aufgedruckte Nummer.</translation>
    </message>
    <message>
        <source>Check the number printed at its top, or photograph again with all sheets in view.</source>
        <translation>Prüfen Sie die oben aufgedruckte Nummer, oder fotografieren Sie noch einmal mit allen Blättern im Bild.</translation>
    </message>
    <message>
        <source>A tape must join two different sheets and be longer than nothing.</source>
        <translation>Ein Band muss zwei verschiedene Blätter verbinden und länger als null sein.</translation>
    </message>
    <message>
        <source>Give it as A,B,MM.</source>
        <translation>Geben Sie es als A,B,MM an.</translation>
    </message>
    <message>
        <source>Too little of the projected target can be read (%1 of %2 corners).</source>
        <translation>Vom projizierten Zielbild ist zu wenig lesbar (%1 von %2 Ecken).</translation>
    </message>
    <message>
        <source>Dim the room, keep the whole lit area in view, and photograph again.</source>
        <translation>Dunkeln Sie den Raum ab, behalten Sie das ganze Licht im Bild, und fotografieren Sie noch einmal.</translation>
    </message>
    <message>
        <source>The photograph %1 is too dark: give it more light or a longer exposure.</source>
        <translation>Das Foto %1 ist zu dunkel: Geben Sie ihm mehr Licht oder eine längere Belichtung.</translation>
    </message>
    <message>
        <source>The photograph %1 is blurred: hold the camera still and let it focus.</source>
        <translation>Das Foto %1 ist unscharf: Halten Sie die Kamera still und lassen Sie sie scharfstellen.</translation>
    </message>
    <message>
        <source>Only one sheet is seen.</source>
        <translation>Nur ein Blatt ist zu sehen.</translation>
    </message>
    <message>
        <source>The camera's lens is remembered, but one sheet alone does not show whether it is bent or was moved.</source>
        <translation>Das Objektiv der Kamera ist bekannt, aber ein Blatt allein zeigt nicht, ob es gewölbt ist oder bewegt wurde.</translation>
    </message>
    <message>
        <source>Only one sheet is seen, and the camera's lens is not known.</source>
        <translation>Nur ein Blatt ist zu sehen, und das Objektiv der Kamera ist nicht bekannt.</translation>
    </message>
    <message>
        <source>Lay three more sheets spread over the light and photograph again.</source>
        <translation>Legen Sie noch drei Blätter aus, über das Licht verteilt, und fotografieren Sie noch einmal.</translation>
    </message>
    <message>
        <source>%1 was left out: it shows no sheet that the others show.</source>
        <translation>%1 wurde weggelassen: Es zeigt kein Blatt, das die anderen zeigen.</translation>
    </message>
    <message>
        <source>Of the target on the raised sheet nothing could be read, so it says nothing of how the light slants.</source>
        <translation>Vom Zielbild auf dem erhöhten Blatt war nichts lesbar; es sagt also nichts darüber, wie schräg das Licht fällt.</translation>
    </message>
    <message>
        <source>Lay it where the light is sharp, or give --lamp-height.</source>
        <translation>Legen Sie es dorthin, wo das Licht scharf ist, oder geben Sie die Linsenhöhe an.</translation>
    </message>
    <message>
        <source>There are no photographs.</source>
        <translation>Es gibt keine Fotos.</translation>
    </message>
    <message>
        <source>Take one to five of the table under the target and under plain light.</source>
        <translation>Machen Sie eines bis fünf vom Tisch unter dem Zielbild und unter reinem Licht.</translation>
    </message>
    <message>
        <source>There are no photographs of the table yet.</source>
        <translation>Es gibt noch keine Fotos vom Tisch.</translation>
    </message>
    <message>
        <source>Take some first.</source>
        <translation>Machen Sie zuerst welche.</translation>
    </message>
    <message>
        <source>The lens is not remembered.</source>
        <translation>Das Objektiv wird nicht behalten.</translation>
    </message>
    <message>
        <source>This file is not a lens memory of this Cowlcast.</source>
        <translation>Diese Datei ist kein Objektivgedächtnis dieses Programms.</translation>
    </message>
    <message>
        <source>Give --lens-memory none, or delete it.</source>
        <translation>Löschen Sie sie.</translation>
    </message>
    <message>
        <source>The lens memory is damaged.</source>
        <translation>Das Objektivgedächtnis ist beschädigt.</translation>
    </message>
    <message>
        <source>Delete it, or give --lens-memory none.</source>
        <translation>Löschen Sie es.</translation>
    </message>
    <message>
        <source>The lens of %1 does not look as it did when it was remembered (another lens, zoom or crop?), so the photographs alone were believed.</source>
        <translation>Das Objektiv von %1 sieht nicht aus wie in Erinnerung (anderes Objektiv, Zoom oder Ausschnitt?), darum zählen nur die Fotos.</translation>
    </message>
    <message>
        <source>The projected target is not seen in any photograph.</source>
        <translation>Das projizierte Zielbild ist auf keinem Foto zu sehen.</translation>
    </message>
    <message>
        <source>Show the target picture with the projector, dim the room, and photograph the whole lit area again.</source>
        <translation>Zeigen Sie das Zielbild mit dem Projektor, dunkeln Sie den Raum ab, und fotografieren Sie das ganze Licht noch einmal.</translation>
    </message>
    <message>
        <source>The projector shows its picture mirrored.</source>
        <translation>Der Projektor zeigt sein Bild gespiegelt.</translation>
    </message>
    <message>
        <source>Turn off rear projection or mirroring in its menu, and photograph again.</source>
        <translation>Schalten Sie Rückprojektion oder Spiegelung in seinem Menü aus und fotografieren Sie noch einmal.</translation>
    </message>
    <message>
        <source>The projected target does not fit any projector.</source>
        <translation>Das projizierte Zielbild passt zu keinem Projektor.</translation>
    </message>
    <message>
        <source>Check that the resolution given is the one the projector shows, with no scaling, and photograph again.</source>
        <translation>Prüfen Sie, ob die angegebene Bildgröße die ist, die der Projektor ohne Skalierung zeigt, und fotografieren Sie noch einmal.</translation>
    </message>
    <message>
        <source>The %1 of the target is not where it should be.</source>
        <translation>Das Zielbild sitzt nicht, wo es soll: %1.</translation>
    </message>
    <message>
        <source>Check that --projector is the size the target was made for, that the projector shows all of it, and that it all falls on the table.</source>
        <translation>Prüfen Sie, ob die Bildgröße die ist, für die das Zielbild gemacht wurde, ob der Projektor es ganz zeigt, und ob es ganz auf den Tisch fällt.</translation>
    </message>
    <message>
        <source>upper edge</source>
        <translation>obere Kante</translation>
    </message>
    <message>
        <source>lower edge</source>
        <translation>untere Kante</translation>
    </message>
    <message>
        <source>left edge</source>
        <translation>linke Kante</translation>
    </message>
    <message>
        <source>right edge</source>
        <translation>rechte Kante</translation>
    </message>
    <message>
        <source>The file %1 cannot be read as a photograph.</source>
        <translation>Die Datei %1 lässt sich nicht als Foto lesen.</translation>
    </message>
    <message>
        <source>Copy it again from the camera, or leave it out.</source>
        <translation>Kopieren Sie sie noch einmal von der Kamera, oder lassen Sie sie weg.</translation>
    </message>
    <message>
        <source>The photograph %1 has %2 pixels, which is too small or too large.</source>
        <translation>Das Foto %1 hat %2 Pixel; das ist zu klein oder zu groß.</translation>
    </message>
    <message>
        <source>Use the camera's own full-size photograph.</source>
        <translation>Nehmen Sie das Foto in voller Größe aus der Kamera.</translation>
    </message>
    <message>
        <source>The board under %1 is given as %2 mm thick.</source>
        <translation>Für das Brett unter %1 sind %2 mm Dicke angegeben.</translation>
    </message>
    <message>
        <source>Use one between %1 and %2 mm, for example a hardback book or a kitchen board, and measure it with a rule.</source>
        <translation>Nehmen Sie eines zwischen %1 und %2 mm, etwa ein gebundenes Buch oder ein Küchenbrett, und messen Sie es mit einem Lineal.</translation>
    </message>
    <message>
        <source>sheet %1</source>
        <translation>Blatt %1</translation>
    </message>
    <message>
        <source>The raised %1 is not seen in any photograph.</source>
        <translation>Erhöht, aber auf keinem Foto zu sehen: %1.</translation>
    </message>
    <message>
        <source>The board under %1 is given as %2 mm thick, but the photographs say about %3 mm.</source>
        <translation>Für das Brett unter %1 sind %2 mm Dicke angegeben, die Fotos sagen etwa %3 mm.</translation>
    </message>
    <message>
        <source>Measure it again, and see that it lies flat on the mat and the sheet on it.</source>
        <translation>Messen Sie es noch einmal, und sehen Sie zu, dass es flach auf der Matte liegt und das Blatt flach darauf.</translation>
    </message>
    <message>
        <source>No printed sheet is seen in any photograph.</source>
        <translation>Auf keinem Foto ist ein gedrucktes Blatt zu sehen.</translation>
    </message>
    <message>
        <source>Lay the sheets in the light, hold the camera so that each sheet is sharp and large in the picture, and photograph again.</source>
        <translation>Legen Sie die Blätter ins Licht, halten Sie die Kamera so, dass jedes Blatt scharf und groß im Bild ist, und fotografieren Sie noch einmal.</translation>
    </message>
    <message>
        <source>The sheets in the photographs cannot be brought together.</source>
        <translation>Die Blätter auf den Fotos lassen sich nicht zusammenbringen.</translation>
    </message>
    <message>
        <source>Check that the sheets lie flat and were not moved between photographs, and photograph again.</source>
        <translation>Prüfen Sie, ob die Blätter flach liegen und zwischen den Fotos nicht bewegt wurden, und fotografieren Sie noch einmal.</translation>
    </message>
    <message>
        <source>A point lies outside of what the lens can see.</source>
        <translation>Ein Punkt liegt außerhalb dessen, was die Linse sieht.</translation>
    </message>
    <message>
        <source>Calibrate again with the whole picture in view.</source>
        <translation>Kalibrieren Sie neu, das ganze Bild in Sicht.</translation>
    </message>
    <message>
        <source>A projector picture of %1 x %2 pixels cannot be used.</source>
        <translation>Ein Projektorbild von %1 x %2 Pixeln ist nicht brauchbar.</translation>
    </message>
    <message>
        <source>Give the projector's own resolution, for example 1920x1080.</source>
        <translation>Geben Sie die eigene Bildgröße des Projektors an, zum Beispiel 1920x1080.</translation>
    </message>
    <message>
        <source>The projector picture must lie on its long side and be at most 2.2 times as wide as high.</source>
        <translation>Das Projektorbild muss quer liegen und höchstens 2,2-mal so breit wie hoch sein.</translation>
    </message>
    <message>
        <source>Give the resolution as WIDTHxHEIGHT.</source>
        <translation>Geben Sie die Bildgröße als BREITExHÖHE an.</translation>
    </message>
    <message>
        <source>A point lies where the projector cannot throw light.</source>
        <translation>Ein Punkt liegt, wo der Projektor kein Licht hinwirft.</translation>
    </message>
    <message>
        <source>Move the piece into the lit area.</source>
        <translation>Schieben Sie das Teil ins Licht.</translation>
    </message>
    <message>
        <source>A pixel's light does not reach the table.</source>
        <translation>Das Licht eines Pixels erreicht den Tisch nicht.</translation>
    </message>
    <message>
        <source>Point the projector down at the mat and calibrate again.</source>
        <translation>Richten Sie den Projektor auf die Matte und kalibrieren Sie neu.</translation>
    </message>
    <message>
        <source>This file is not a table map.</source>
        <translation>Diese Datei ist keine Tischkarte.</translation>
    </message>
    <message>
        <source>Choose the file that `cowlcast calibrate` wrote.</source>
        <translation>Wählen Sie die Datei, die `cowlcast calibrate` geschrieben hat.</translation>
    </message>
    <message>
        <source>This table map was written by a newer Cowlcast.</source>
        <translation>Diese Tischkarte stammt von einem neueren Cowlcast.</translation>
    </message>
    <message>
        <source>Update the program, or calibrate again.</source>
        <translation>Aktualisieren Sie das Programm, oder kalibrieren Sie neu.</translation>
    </message>
    <message>
        <source>This table map contradicts itself, so it may have been edited.</source>
        <translation>Diese Tischkarte widerspricht sich; vielleicht wurde sie verändert.</translation>
    </message>
    <message>
        <source>This table map is damaged or not complete.</source>
        <translation>Diese Tischkarte ist beschädigt oder unvollständig.</translation>
    </message>
    <message>
        <source>Calibrate again, or use a copy.</source>
        <translation>Kalibrieren Sie neu, oder nehmen Sie eine Kopie.</translation>
    </message>
    <message>
        <source>Calibrate again.</source>
        <translation>Kalibrieren Sie neu.</translation>
    </message>
    <message>
        <source>There are sheets 1 to %1.</source>
        <translation>Es gibt die Blätter 1 bis %1.</translation>
    </message>
    <message>
        <source>Ask for a number in that range.</source>
        <translation>Wählen Sie eine Nummer in diesem Bereich.</translation>
    </message>
    <message>
        <source>There are edge tags 1 to %1.</source>
        <translation>Es gibt die Randmarken 1 bis %1.</translation>
    </message>
    <message>
        <source>The view is not sharp.</source>
        <translation>Das Bild ist nicht scharf.</translation>
    </message>
    <message>
        <source>Focus on the mat, or hold the camera still.</source>
        <translation>Stellen Sie auf die Matte scharf, oder halten Sie die Kamera still.</translation>
    </message>
    <message>
        <source>No sheet is seen.</source>
        <translation>Kein Blatt ist zu sehen.</translation>
    </message>
    <message>
        <source>Turn the camera so that sheets and light fill its view.</source>
        <translation>Drehen Sie die Kamera so, dass Blätter und Licht ihr Bild füllen.</translation>
    </message>
    <message>
        <source>The sheets are too dark.</source>
        <translation>Die Blätter sind zu dunkel.</translation>
    </message>
    <message>
        <source>Give the room more light.</source>
        <translation>Geben Sie dem Raum mehr Licht.</translation>
    </message>
    <message>
        <source>The paper is burnt out white.</source>
        <translation>Das Papier ist weiß überstrahlt.</translation>
    </message>
    <message>
        <source>Lower the camera's exposure.</source>
        <translation>Belichten Sie kürzer.</translation>
    </message>
    <message>
        <source>Only %1 sheet is seen; four are better.</source>
        <translation>Nur %1 Blatt ist zu sehen; vier sind besser.</translation>
    </message>
    <message>
        <source>Only %1 sheets are seen; four are better.</source>
        <translation>Nur %1 Blätter sind zu sehen; vier sind besser.</translation>
    </message>
    <message>
        <source>The left third of the light is not wholly in view.</source>
        <translation>Das linke Drittel des Lichts ist nicht ganz im Bild.</translation>
    </message>
    <message>
        <source>The middle third of the light is not wholly in view.</source>
        <translation>Das mittlere Drittel des Lichts ist nicht ganz im Bild.</translation>
    </message>
    <message>
        <source>The right third of the light is not wholly in view.</source>
        <translation>Das rechte Drittel des Lichts ist nicht ganz im Bild.</translation>
    </message>
    <message>
        <source>Bring it in.</source>
        <translation>Holen Sie es hinein.</translation>
    </message>
    <message>
        <source>No sheet lies in the left third of the light.</source>
        <translation>Im linken Drittel des Lichts liegt kein Blatt.</translation>
    </message>
    <message>
        <source>No sheet lies in the middle third of the light.</source>
        <translation>Im mittleren Drittel des Lichts liegt kein Blatt.</translation>
    </message>
    <message>
        <source>No sheet lies in the right third of the light.</source>
        <translation>Im rechten Drittel des Lichts liegt kein Blatt.</translation>
    </message>
    <message>
        <source>Lay one there.</source>
        <translation>Legen Sie eines dorthin.</translation>
    </message>
    <message>
        <source>The target in the light is not read.</source>
        <translation>Das Zielbild im Licht ist nicht lesbar.</translation>
    </message>
    <message>
        <source>Dim the room, or check that it is shown.</source>
        <translation>Dunkeln Sie den Raum ab, oder prüfen Sie, ob es gezeigt wird.</translation>
    </message>
    <message>
        <source>All photographs are taken.</source>
        <translation>Alle Fotos sind gemacht.</translation>
    </message>
    <message>
        <source>Carry the camera to another side of the table.</source>
        <translation>Tragen Sie die Kamera auf eine andere Seite des Tisches.</translation>
    </message>
    <message>
        <source>Wait.</source>
        <translation>Warten Sie.</translation>
    </message>
    <message>
        <source>Waiting.</source>
        <translation>Es wird gewartet.</translation>
    </message>
    <message>
        <source>Hold the camera still.</source>
        <translation>Halten Sie die Kamera still.</translation>
    </message>
    <message>
        <source>Hold still.</source>
        <translation>Stillhalten.</translation>
    </message>
    <message>
        <source>A pixel of the camera does not look at the table.</source>
        <translation>Ein Pixel der Kamera sieht nicht auf den Tisch.</translation>
    </message>
    <message>
        <source>Point the camera down at the mat.</source>
        <translation>Richten Sie die Kamera auf die Matte.</translation>
    </message>
    <message>
        <source>This file does not tell where a camera stands.</source>
        <translation>Diese Datei sagt nicht, wo eine Kamera steht.</translation>
    </message>
    <message>
        <source>This camera file was written by a newer Cowlcast.</source>
        <translation>Diese Kameradatei stammt von einem neueren Cowlcast.</translation>
    </message>
    <message>
        <source>Update the program, or locate the camera again.</source>
        <translation>Aktualisieren Sie das Programm, oder bestimmen Sie den Ort der Kamera neu.</translation>
    </message>
    <message>
        <source>This camera file contradicts itself, so it may have been edited.</source>
        <translation>Diese Kameradatei widerspricht sich; vielleicht wurde sie verändert.</translation>
    </message>
    <message>
        <source>This camera file is damaged or not complete.</source>
        <translation>Diese Kameradatei ist beschädigt oder unvollständig.</translation>
    </message>
    <message>
        <source>Locate the camera again.</source>
        <translation>Bestimmen Sie den Ort der Kamera neu.</translation>
    </message>
    <message>
        <source>Locate it again.</source>
        <translation>Bestimmen Sie ihren Ort neu.</translation>
    </message>
    <message>
        <source>The camera "%1" is gone.</source>
        <translation>Die Kamera „%1“ ist weg.</translation>
    </message>
    <message>
        <source>Plug it in again; it is looked for by itself.</source>
        <translation>Stecken Sie sie wieder ein; sie wird von selbst gesucht.</translation>
    </message>
    <message>
        <source>There is no camera or film "%1".</source>
        <translation>Es gibt keine Kamera und keinen Film „%1“.</translation>
    </message>
    <message>
        <source>Plug the camera in and close other programs that use it, or name another.</source>
        <translation>Stecken Sie die Kamera ein und schließen Sie andere Programme, die sie benutzen, oder nennen Sie eine andere.</translation>
    </message>
    <message>
        <source>The film "%1" has come to its end.</source>
        <translation>Der Film „%1“ ist zu Ende.</translation>
    </message>
    <message>
        <source>The camera "%1" sends no pictures.</source>
        <translation>Die Kamera „%1“ schickt keine Bilder.</translation>
    </message>
    <message>
        <source>The camera was asked for %1 x %2 pixels and sends %3.</source>
        <translation>Von der Kamera wurden %1 x %2 Pixel verlangt, sie schickt %3.</translation>
    </message>
    <message>
        <source>The camera has sent no picture for some seconds.</source>
        <translation>Die Kamera hat seit einigen Sekunden kein Bild geschickt.</translation>
    </message>
    <message>
        <source>Check its cable.</source>
        <translation>Prüfen Sie ihr Kabel.</translation>
    </message>
    <message>
        <source>The camera does not read the target in the light.</source>
        <translation>Die Kamera kann das Zielbild im Licht nicht lesen.</translation>
    </message>
    <message>
        <source>Turn it so that the light fills its view, focus on the mat, dim the room, and try again.</source>
        <translation>Drehen Sie sie so, dass das Licht ihr Bild füllt, stellen Sie auf die Matte scharf, dunkeln Sie den Raum ab, und versuchen Sie es noch einmal.</translation>
    </message>
    <message>
        <source>What the camera sees of the target fits no place above the table.</source>
        <translation>Was die Kamera vom Zielbild sieht, passt zu keinem Ort über dem Tisch.</translation>
    </message>
    <message>
        <source>Check that the table file is the one of this projector, and that the camera's picture is not mirrored.</source>
        <translation>Prüfen Sie, ob die Tischkarte zu diesem Projektor gehört und das Kamerabild nicht gespiegelt ist.</translation>
    </message>
    <message>
        <source>The camera sees too little of the left third of the light clearly.</source>
        <translation>Die Kamera sieht vom linken Drittel des Lichts zu wenig deutlich.</translation>
    </message>
    <message>
        <source>The camera sees too little of the middle third of the light clearly.</source>
        <translation>Die Kamera sieht vom mittleren Drittel des Lichts zu wenig deutlich.</translation>
    </message>
    <message>
        <source>The camera sees too little of the right third of the light clearly.</source>
        <translation>Die Kamera sieht vom rechten Drittel des Lichts zu wenig deutlich.</translation>
    </message>
    <message>
        <source>Turn it so that it sees the whole light, clear the light of what lies in it, dim the room, and try again.</source>
        <translation>Drehen Sie sie so, dass sie das ganze Licht sieht, räumen Sie das Licht frei, dunkeln Sie den Raum ab, und versuchen Sie es noch einmal.</translation>
    </message>
    <message>
        <source>The camera sees only %1 of the %2 corners of the target clearly.</source>
        <translation>Die Kamera sieht nur %1 der %2 Ecken des Zielbilds deutlich.</translation>
    </message>
    <message>
        <source>Focus it on the mat, dim the room, and try again.</source>
        <translation>Stellen Sie sie auf die Matte scharf, dunkeln Sie den Raum ab, und versuchen Sie es noch einmal.</translation>
    </message>
    <message>
        <source>The light does not lie where the table file says: sheet %1 seems %2 % too large.</source>
        <translation>Das Licht liegt nicht, wo die Tischkarte sagt: Blatt %1 scheint %2 % zu groß.</translation>
    </message>
    <message>
        <source>The light does not lie where the table file says: sheet %1 seems %2 % too small.</source>
        <translation>Das Licht liegt nicht, wo die Tischkarte sagt: Blatt %1 scheint %2 % zu klein.</translation>
    </message>
    <message>
        <source>The projector was moved or zoomed since, or the sheet is bent.</source>
        <translation>Der Projektor wurde seither bewegt oder gezoomt, oder das Blatt ist gewölbt.</translation>
    </message>
    <message>
        <source>Calibrate again, then locate the camera.</source>
        <translation>Kalibrieren Sie neu, dann bestimmen Sie den Ort der Kamera.</translation>
    </message>
    <message>
        <source>The frames of the target and of plain light differ in size.</source>
        <translation>Die Bilder vom Zielbild und vom reinen Licht sind verschieden groß.</translation>
    </message>
    <message>
        <source>Take both with one camera.</source>
        <translation>Nehmen Sie beide mit einer Kamera auf.</translation>
    </message>
    <message>
        <source>The camera sees too little of the target clearly.</source>
        <translation>Die Kamera sieht vom Zielbild zu wenig deutlich.</translation>
    </message>
    <message>
        <source>Focus it on the mat and dim the room.</source>
        <translation>Stellen Sie sie auf die Matte scharf und dunkeln Sie den Raum ab.</translation>
    </message>
    <message>
        <source>No lens and place explain what the camera sees: corners of the target lie %1 mm from where the table file has them.</source>
        <translation>Kein Objektiv und kein Ort erklären, was die Kamera sieht: Ecken des Zielbilds liegen %1 mm neben den Plätzen der Tischkarte.</translation>
    </message>
    <message>
        <source>Lay nothing in the light that is not flat, see that the table file is of this projector, switch off the camera's own corrections, and try again.</source>
        <translation>Legen Sie nichts Unebenes ins Licht, prüfen Sie, ob die Tischkarte zu diesem Projektor gehört, schalten Sie Korrekturen der Kamera aus, und versuchen Sie es noch einmal.</translation>
    </message>
    <message>
        <source>No printed sheet lies in view, so it was not checked whether the light still lies as it was calibrated.</source>
        <translation>Kein gedrucktes Blatt ist im Bild; ob das Licht noch liegt wie kalibriert, wurde also nicht geprüft.</translation>
    </message>
    <message>
        <source>Locate the camera right after calibrating, with the sheets still there.</source>
        <translation>Bestimmen Sie den Ort der Kamera gleich nach dem Kalibrieren, solange die Blätter noch liegen.</translation>
    </message>
    <message>
        <source>Only %1 edge tags are seen.</source>
        <translation>Nur %1 Randmarken sind zu sehen.</translation>
    </message>
    <message>
        <source>To watch the table eight around the mat's edge are wanted: `cowlcast sheets --edge-tags` prints them.</source>
        <translation>Um den Tisch zu beobachten, braucht es acht rund um die Matte; `cowlcast sheets --edge-tags` druckt sie.</translation>
    </message>
    <message>
        <source>The camera stands %1 mm above the mat.</source>
        <translation>Die Kamera steht %1 mm über der Matte.</translation>
    </message>
    <message>
        <source>%1 of %2 corners of the target bear that out; corners left out are seen within %3 mm of their places in every part of the light.</source>
        <translation>%1 von %2 Ecken des Zielbilds bestätigen das; weggelassene Ecken sind in jedem Teil des Lichts höchstens %3 mm neben ihrem Platz zu sehen.</translation>
    </message>
    <message>
        <source>Out to its very corners places are right within %1 mm.</source>
        <translation>Bis in die äußersten Ecken stimmen Orte auf %1 mm.</translation>
    </message>
    <message>
        <source>Edge tags seen: %1; sheets that agree with the light: %2.</source>
        <translation>Gesehene Randmarken: %1; Blätter, die zum Licht passen: %2.</translation>
    </message>
    <message>
        <source>The check figure has no cross %1.</source>
        <translation>Die Prüffigur hat kein Kreuz %1.</translation>
    </message>
    <message>
        <source>Its crosses are %1.</source>
        <translation>Ihre Kreuze sind %1.</translation>
    </message>
    <message>
        <source>The light on the mat is too small for a check figure.</source>
        <translation>Das Licht auf der Matte ist zu klein für eine Prüffigur.</translation>
    </message>
    <message>
        <source>Calibrate with a larger picture.</source>
        <translation>Kalibrieren Sie mit größerem Bild.</translation>
    </message>
    <message>
        <source>A tape is laid between two different crosses and reads more than nothing.</source>
        <translation>Ein Band liegt zwischen zwei verschiedenen Kreuzen und zeigt mehr als null.</translation>
    </message>
    <message>
        <source>To refine the scale, give what a tape reads between two far crosses.</source>
        <translation>Um den Maßstab zu verbessern, geben Sie an, was ein Band zwischen zwei entfernten Kreuzen zeigt.</translation>
    </message>
    <message>
        <source>The tape from %1 to %2 does not go with the others: %3 mm where they say %4.</source>
        <translation>Das Band von %1 nach %2 passt nicht zu den anderen: %3 mm, wo sie %4 sagen.</translation>
    </message>
    <message>
        <source>Measure again.</source>
        <translation>Messen Sie noch einmal.</translation>
    </message>
    <message>
        <source>The tape says that the scale is off by %1 %, more than this calibration leaves open.</source>
        <translation>Nach dem Band ist der Maßstab um %1 % falsch, mehr als diese Kalibrierung offenlässt.</translation>
    </message>
    <message>
        <source>Measure again, straight from cross to cross; if it stays so, calibrate again.</source>
        <translation>Messen Sie noch einmal, gerade von Kreuz zu Kreuz; bleibt es so, kalibrieren Sie neu.</translation>
    </message>
    <message>
        <source>A projector picture of %1 x %2 pixels is not one that can be watched.</source>
        <translation>Ein Projektorbild von %1 x %2 Pixeln lässt sich nicht beobachten.</translation>
    </message>
    <message>
        <source>The camera changes its exposure with the picture that is shown, so nothing can be learnt.</source>
        <translation>Die Kamera ändert ihre Belichtung mit dem gezeigten Bild; so lässt sich nichts lernen.</translation>
    </message>
    <message>
        <source>Hold its exposure, in its own settings, and try again.</source>
        <translation>Halten Sie die Belichtung in ihren Einstellungen fest und versuchen Sie es noch einmal.</translation>
    </message>
    <message>
        <source>The camera sends pictures of another size than when it was located.</source>
        <translation>Die Kamera schickt Bilder anderer Größe als bei der Bestimmung ihres Ortes.</translation>
    </message>
    <message>
        <source>The camera sees only %1 of the tags at the mat's edge clearly.</source>
        <translation>Die Kamera sieht nur %1 der Marken am Mattenrand deutlich.</translation>
    </message>
    <message>
        <source>Glue eight or more flat around the edge, where the camera sees them, clear the view, and give the room some light.</source>
        <translation>Kleben Sie acht oder mehr flach rund um den Rand, wo die Kamera sie sieht, räumen Sie die Sicht frei, und machen Sie etwas Licht.</translation>
    </message>
    <message>
        <source>The camera sees only %1 of the twelve marks at the border of the light clearly.</source>
        <translation>Die Kamera sieht nur %1 der zwölf Marken am Rand des Lichts deutlich.</translation>
    </message>
    <message>
        <source>Turn the camera so that it sees the whole light, clear the border, and dim the room.</source>
        <translation>Drehen Sie die Kamera so, dass sie das ganze Licht sieht, räumen Sie den Rand frei, und dunkeln Sie den Raum ab.</translation>
    </message>
    <message>
        <source>Lay out the sheets and calibrate.</source>
        <translation>Legen Sie die Blätter aus und kalibrieren Sie.</translation>
    </message>
    <message>
        <source>The mat moved, but its tags do not tell well enough where to (they miss by %1 mm).</source>
        <translation>Die Matte hat sich bewegt, aber ihre Marken sagen nicht gut genug, wohin (sie liegen %1 mm daneben).</translation>
    </message>
    <message>
        <source>The camera moved, but tags and marks do not tell well enough where to (they miss by %1 pixels).</source>
        <translation>Die Kamera hat sich bewegt, aber die Marken sagen nicht gut genug, wohin (sie liegen %1 Pixel daneben).</translation>
    </message>
    <message>
        <source>The projector moved, or was zoomed or refocused: its marks do not lie as a move alone would lay them (they miss by %1 mm).</source>
        <translation>Der Projektor hat sich bewegt, oder er wurde gezoomt oder neu scharfgestellt: Seine Marken liegen nicht so, wie eine Bewegung allein sie legen würde (%1 mm daneben).</translation>
    </message>
    <message>
        <source>The projector's place came out under the table.</source>
        <translation>Als Ort des Projektors kam einer unter dem Tisch heraus.</translation>
    </message>
    <message>
        <source>Only %1 tags and %2 marks of light are found again.</source>
        <translation>Nur %1 Marken auf der Matte und %2 Marken aus Licht sind wiederzufinden.</translation>
    </message>
    <message>
        <source>Clear the mat's edge and the border of the light and try again, or lay out the sheets and calibrate.</source>
        <translation>Räumen Sie den Mattenrand und den Rand des Lichts frei und versuchen Sie es noch einmal, oder legen Sie die Blätter aus und kalibrieren Sie.</translation>
    </message>
    <message>
        <source>Nothing moved: all stands where it was.</source>
        <translation>Nichts hat sich bewegt: Alles steht, wo es stand.</translation>
    </message>
    <message>
        <source>More than one thing moved: the %1 and the %2.</source>
        <translation>Mehr als eines hat sich bewegt: %1 und %2.</translation>
    </message>
    <message>
        <source>The %1 moved by %2 mm, too far to be followed.</source>
        <translation>Bewegt hat sich: %1, um %2 mm, zu weit, um zu folgen.</translation>
    </message>
    <message>
        <source>Tags and marks tell where the %1 is now only within %2 mm.</source>
        <translation>Die Marken sagen nur auf %2 mm genau, wo jetzt steht: %1.</translation>
    </message>
    <message>
        <source>The %1 moved, by up to %2 mm.</source>
        <translation>Bewegt hat sich: %1, um bis zu %2 mm.</translation>
    </message>
    <message>
        <source>The %1 or the camera moved, by up to %2 mm.</source>
        <translation>Bewegt hat sich: %1 oder die Kamera, um bis zu %2 mm.</translation>
    </message>
    <message>
        <source>The %1 moved, by up to %2 mm, and the %3 moved, by up to %4 mm.</source>
        <translation>Bewegt haben sich: %1, um bis zu %2 mm, und %3, um bis zu %4 mm.</translation>
    </message>
    <message>
        <source>mat</source>
        <translation>Matte</translation>
    </message>
    <message>
        <source>projector</source>
        <translation>Projektor</translation>
    </message>
    <message>
        <source>camera</source>
        <translation>Kamera</translation>
    </message>
    <message>
        <source>The lines are as right as before; the camera's place is known again.</source>
        <translation>Die Linien sind so richtig wie zuvor; der Ort der Kamera ist wieder bekannt.</translation>
    </message>
    <message>
        <source>That is allowed for: lines land where they were within %1 mm, and within %2 mm of true.</source>
        <translation>Das ist eingerechnet: Linien liegen auf %1 mm dort, wo sie waren, und höchstens %2 mm daneben.</translation>
    </message>
    <message>
        <source>Since the camera was located something was moved: %1.</source>
        <translation>Seit der Ort der Kamera bestimmt wurde, hat sich etwas bewegt: %1.</translation>
    </message>
    <message>
        <source>the %1 by up to %2 mm</source>
        <translation>%1 um bis zu %2 mm</translation>
    </message>
    <message>
        <source>the %1 by up to %2 mm and the %3 by up to %4 mm</source>
        <translation>%1 um bis zu %2 mm und %3 um bis zu %4 mm</translation>
    </message>
    <message>
        <source>Calibrate again and locate the camera, or, where only the camera was moved, locate it.</source>
        <translation>Kalibrieren Sie neu und bestimmen Sie den Ort der Kamera; wurde nur die Kamera bewegt, genügt das Zweite.</translation>
    </message>
    <message>
        <source>The lines are no longer right: put the blade down.</source>
        <translation>Die Linien stimmen nicht mehr: Legen Sie die Klinge weg.</translation>
    </message>
    <message>
        <source>The camera sees neither tags nor marks where they were.</source>
        <translation>Die Kamera sieht keine der Marken dort, wo sie waren.</translation>
    </message>
    <message>
        <source>Clear its view; if it was knocked, calibrate again.</source>
        <translation>Räumen Sie ihre Sicht frei; wurde sie angestoßen, kalibrieren Sie neu.</translation>
    </message>
    <message>
        <source>The camera does not see the tags at the mat's edge.</source>
        <translation>Die Kamera sieht die Marken am Mattenrand nicht.</translation>
    </message>
    <message>
        <source>Clear them; if the mat was moved, calibrate again.</source>
        <translation>Räumen Sie sie frei; wurde die Matte bewegt, kalibrieren Sie neu.</translation>
    </message>
    <message>
        <source>The camera does not see the marks at the border of the light.</source>
        <translation>Die Kamera sieht die Marken am Rand des Lichts nicht.</translation>
    </message>
    <message>
        <source>Clear them; if the projector was moved, calibrate again.</source>
        <translation>Räumen Sie sie frei; wurde der Projektor bewegt, kalibrieren Sie neu.</translation>
    </message>
    <message>
        <source>cowl back facing</source>
        <translation>Beleg des Wasserfall-Rückenteils</translation>
    </message>
    <message>
        <source>inner panel side seam</source>
        <translation>Seitennaht des Innenstücks</translation>
    </message>
    <message>
        <source>inner panel armhole</source>
        <translation>Armloch des Innenstücks</translation>
    </message>
    <message>
        <source>facing</source>
        <translation>Beleg</translation>
    </message>
    <message>
        <source>back facing</source>
        <translation>Rückenbeleg</translation>
    </message>
    <message>
        <source>sleeve cap</source>
        <translation>Armkugel</translation>
    </message>
    <message>
        <source>sleeve</source>
        <translation>Ärmel</translation>
    </message>
    <message>
        <source>an armhole</source>
        <translation>ein Armloch</translation>
    </message>
    <message>
        <source>inner panel top</source>
        <translation>Oberkante des Innenstücks</translation>
    </message>
    <message>
        <source>centre-front</source>
        <translation>vordere Mitte</translation>
    </message>
    <message>
        <source>centre-back</source>
        <translation>hintere Mitte</translation>
    </message>
    <message>
        <source>side-seam</source>
        <translation>Seitennaht</translation>
    </message>
    <message>
        <source>facing-edge</source>
        <translation>Belegkante</translation>
    </message>
    <message>
        <source>facing edge</source>
        <translation>Belegkante</translation>
    </message>
    <message>
        <source>facing-shoulder</source>
        <translation>Belegschulter</translation>
    </message>
    <message>
        <source>facing shoulder</source>
        <translation>Belegschulter</translation>
    </message>
    <message>
        <source>camisole-top</source>
        <translation>Oberkante des Innenstücks</translation>
    </message>
    <message>
        <source>camisole top</source>
        <translation>Oberkante des Innenstücks</translation>
    </message>
    <message>
        <source>camisole-hem</source>
        <translation>Saum des Innenstücks</translation>
    </message>
    <message>
        <source>camisole hem</source>
        <translation>Saum des Innenstücks</translation>
    </message>
    <message>
        <source>cowl edge</source>
        <translation>Wasserfallkante</translation>
    </message>
    <message>
        <source>cut line</source>
        <translation>Schnittlinie</translation>
    </message>
    <message>
        <source>neck point</source>
        <translation>Halspunkt</translation>
    </message>
    <message>
        <source>hinge</source>
        <translation>Drehpunkt</translation>
    </message>
    <message>
        <source>band</source>
        <translation>Streifen</translation>
    </message>
    <message>
        <source>binding</source>
        <translation>Einfassung</translation>
    </message>
    <message>
        <source>elastic</source>
        <translation>Gummi</translation>
    </message>
    <message>
        <source>turned</source>
        <translation>eingeschlagen</translation>
    </message>
    <message>
        <source>at the %1</source>
        <translation>bei: %1</translation>
    </message>
    <message>
        <source>%1 below the %2</source>
        <translation>%1 unter: %2</translation>
    </message>
    <message>
        <source>%1 above the %2</source>
        <translation>%1 über: %2</translation>
    </message>
    <message>
        <source>%1 out from the centre and %2 above the hem at the centre</source>
        <translation>%1 von der Mitte und %2 über dem Saum in der Mitte</translation>
    </message>
    <message>
        <source>There can be at most 6 slash lines.</source>
        <translation>Es kann höchstens 6 Einschnitte geben.</translation>
    </message>
    <message>
        <source>Take some away.</source>
        <translation>Nehmen Sie welche weg.</translation>
    </message>
    <message>
        <source>There are %1 slash lines but %2 openings.</source>
        <translation>Es gibt %1 Einschnitte, aber %2 Öffnungen.</translation>
    </message>
    <message>
        <source>Give one opening for each slash line, from the top down.</source>
        <translation>Geben Sie für jeden Einschnitt eine Öffnung an, von oben nach unten.</translation>
    </message>
    <message>
        <source>Each opening's proportion must be between 0.05 and 20.</source>
        <translation>Der Anteil jeder Öffnung muss zwischen 0,05 und 20 liegen.</translation>
    </message>
    <message>
        <source>Give 1 for all to open evenly.</source>
        <translation>Geben Sie überall 1 an, damit sich alle gleich öffnen.</translation>
    </message>
    <message>
        <source>Each opening must be between 0 and 40 degrees.</source>
        <translation>Jede Öffnung muss zwischen 0 und 40 Grad liegen.</translation>
    </message>
    <message>
        <source>Open the other slash lines more instead.</source>
        <translation>Öffnen Sie stattdessen die anderen Einschnitte weiter.</translation>
    </message>
    <message>
        <source>The swing's centre must lie on the centre front, between 0 and %1 above the hem.</source>
        <translation>Der Drehpunkt des Schwenks muss auf der vorderen Mitte liegen, zwischen 0 und %1 über dem Saum.</translation>
    </message>
    <message>
        <source>Move it there.</source>
        <translation>Schieben Sie ihn dorthin.</translation>
    </message>
    <message>
        <source>The drill mark "%1" lies above the lowered neckline or outside the front, %2.</source>
        <translation>Die Bohrmarkierung „%1“ liegt über dem tiefergelegten Ausschnitt oder außerhalb des Vorderteils, %2.</translation>
    </message>
    <message>
        <source>Move it, or lower the neckline less.</source>
        <translation>Verschieben Sie sie, oder legen Sie den Ausschnitt weniger tief.</translation>
    </message>
    <message>
        <source>The drape must be a length above zero.</source>
        <translation>Die Länge des Wasserfalls muss größer als null sein.</translation>
    </message>
    <message>
        <source>Measure it along the cowl from shoulder seam to shoulder seam, in millimetres.</source>
        <translation>Messen Sie sie am Wasserfall entlang von Schulternaht zu Schulternaht.</translation>
    </message>
    <message>
        <source>The facing depth must be between 0 and 200 mm.</source>
        <translation>Die Belegtiefe muss zwischen 0 und 200 mm liegen.</translation>
    </message>
    <message>
        <source>About 50 mm suits most cowls.</source>
        <translation>Etwa 50 mm passen für die meisten.</translation>
    </message>
    <message>
        <source>The most swing must be above 0 and at most 60 degrees. 30 degrees is the usual.</source>
        <translation>Der größte Schwenk muss über 0 und höchstens 60 Grad sein. 30 Grad sind üblich.</translation>
    </message>
    <message>
        <source>%1 must be between %2 and %3.</source>
        <translation>%1 muss zwischen %2 und %3 liegen.</translation>
    </message>
    <message>
        <source>Give it in millimetres.</source>
        <translation>Geben Sie es in Millimetern an.</translation>
    </message>
    <message>
        <source>The allowed crossing of the centre front</source>
        <translation>Das erlaubte Überschreiten der vorderen Mitte</translation>
    </message>
    <message>
        <source>The extra length to tack up</source>
        <translation>Die Mehrlänge zum Heften</translation>
    </message>
    <message>
        <source>The drop of the trial hang</source>
        <translation>Der Überhang der Hängeprobe</translation>
    </message>
    <message>
        <source>The elastic's stretch</source>
        <translation>Die Dehnung des Gummis</translation>
    </message>
    <message>
        <source>The elastic's tail</source>
        <translation>Das Ende des Gummis</translation>
    </message>
    <message>
        <source>The sleeve cap's ease</source>
        <translation>Die Einhalteweite der Armkugel</translation>
    </message>
    <message>
        <source>Change it.</source>
        <translation>Ändern Sie das.</translation>
    </message>
    <message>
        <source>%1 times its length</source>
        <translation>das %1-Fache seiner Länge</translation>
    </message>
    <message>
        <source>The cloth's width must be between 300 and 5000 mm.</source>
        <translation>Die Stoffbreite muss zwischen 300 und 5000 mm liegen.</translation>
    </message>
    <message>
        <source>Give the width it is sold in.</source>
        <translation>Geben Sie die Breite an, in der er verkauft wird.</translation>
    </message>
    <message>
        <source>No drape works with this base and these wishes: the opened front would cross itself or be wider than the cloth.</source>
        <translation>Mit diesem Grundschnitt und diesen Wünschen geht keine Länge: Das geöffnete Vorderteil würde sich überschneiden oder breiter sein als der Stoff.</translation>
    </message>
    <message>
        <source>Lower the neckline more, or use fewer slash lines or wider cloth.</source>
        <translation>Legen Sie den Ausschnitt tiefer, oder nehmen Sie weniger Einschnitte oder breiteren Stoff.</translation>
    </message>
    <message>
        <source>With these openings %1.</source>
        <translation>Mit diesen Öffnungen geht es nicht: %1.</translation>
    </message>
    <message>
        <source>a part would lie %1 over the centre front</source>
        <translation>ein Teil läge %1 über der vorderen Mitte</translation>
    </message>
    <message>
        <source>a part would rise %1 above the cowl edge</source>
        <translation>ein Teil stünde %1 über die Wasserfallkante</translation>
    </message>
    <message>
        <source>the neck point would stand too far out even without a swing</source>
        <translation>der Halspunkt stünde auch ohne Schwenk zu weit außen</translation>
    </message>
    <message>
        <source>the neck point would need more swing than the front allows</source>
        <translation>der Halspunkt brauchte mehr Schwenk, als das Vorderteil erlaubt</translation>
    </message>
    <message>
        <source>The nearest that work are %1: set those, or change the drape.</source>
        <translation>Die nächsten, die gehen, sind %1: Stellen Sie diese ein, oder ändern Sie die Länge.</translation>
    </message>
    <message>
        <source>%1 degrees, swing %2 degrees</source>
        <translation>%1 Grad, Schwenk %2 Grad</translation>
    </message>
    <message>
        <source>With these openings %1, and no others reach this drape.</source>
        <translation>Mit diesen Öffnungen geht es nicht: %1, und keine anderen erreichen diese Länge.</translation>
    </message>
    <message>
        <source>Leave the openings free and ask for the drapes that work.</source>
        <translation>Lassen Sie die Öffnungen frei und wählen Sie eine Länge, die geht.</translation>
    </message>
    <message>
        <source>A facing %1 deep does not fit this front: its outline would cross itself.</source>
        <translation>Ein %1 tiefer Beleg passt nicht an dieses Vorderteil: Sein Umriss würde sich überschneiden.</translation>
    </message>
    <message>
        <source>One of %1 works.</source>
        <translation>Einer von %1 geht.</translation>
    </message>
    <message>
        <source>A drape of %1 is too short: the neck points of this base already stand %2 apart.</source>
        <translation>Eine Länge von %1 ist zu kurz: Die Halspunkte dieses Grundschnitts stehen schon %2 auseinander.</translation>
    </message>
    <message>
        <source>The shortest drape that works is %1.</source>
        <translation>Die kürzeste, die geht, ist %1.</translation>
    </message>
    <message>
        <source>A drape of %1 is too long: the parts would have to open or swing further than this front allows.</source>
        <translation>Eine Länge von %1 ist zu groß: Die Teile müssten sich weiter öffnen oder schwenken, als dieses Vorderteil erlaubt.</translation>
    </message>
    <message>
        <source>A drape of %1 is too long: the front would be wider than the cloth.</source>
        <translation>Eine Länge von %1 ist zu groß: Das Vorderteil wäre breiter als der Stoff.</translation>
    </message>
    <message>
        <source>A drape of %1 is too long: the front's outline would cross itself.</source>
        <translation>Eine Länge von %1 ist zu groß: Der Umriss des Vorderteils würde sich überschneiden.</translation>
    </message>
    <message>
        <source>The longest drape that works is %1.</source>
        <translation>Die größte, die geht, ist %1.</translation>
    </message>
    <message>
        <source>The neckline drop must be between 0 mm and %1 for this base.</source>
        <translation>Bei diesem Grundschnitt muss der Ausschnitt um 0 mm bis %1 tiefer liegen.</translation>
    </message>
    <message>
        <source>Give a drop in between; 40 to 100 mm suits most cowls.</source>
        <translation>Geben Sie etwas dazwischen an; 40 bis 100 mm passen für die meisten.</translation>
    </message>
    <message>
        <source>There can be 1 to 6 slash lines; %1 were asked for.</source>
        <translation>Es kann 1 bis 6 Einschnitte geben; verlangt wurden %1.</translation>
    </message>
    <message>
        <source>Three suit most cowls.</source>
        <translation>Drei passen für die meisten.</translation>
    </message>
    <message>
        <source>The neckline is lowered so far that %1 slash lines find no room above the hem.</source>
        <translation>Der Ausschnitt liegt so tief, dass %1 Einschnitte über dem Saum keinen Platz finden.</translation>
    </message>
    <message>
        <source>Lower it less, or use fewer slash lines.</source>
        <translation>Legen Sie ihn weniger tief, oder nehmen Sie weniger Einschnitte.</translation>
    </message>
    <message>
        <source>A slash line must start between 1 mm and %1 below the lowered neckline.</source>
        <translation>Ein Einschnitt muss zwischen 1 mm und %1 unter dem tiefergelegten Ausschnitt beginnen.</translation>
    </message>
    <message>
        <source>Move its start along the centre front.</source>
        <translation>Verschieben Sie seinen Anfang auf der vorderen Mitte.</translation>
    </message>
    <message>
        <source>A slash line must end on the shoulder or the armhole, between its two ends.</source>
        <translation>Ein Einschnitt muss auf Schulter oder Armloch enden, zwischen deren Enden.</translation>
    </message>
    <message>
        <source>Move its hinge.</source>
        <translation>Verschieben Sie seinen Drehpunkt.</translation>
    </message>
    <message>
        <source>A slash line has no length.</source>
        <translation>Ein Einschnitt hat keine Länge.</translation>
    </message>
    <message>
        <source>Draw it from the centre front to the shoulder or the armhole.</source>
        <translation>Zeichnen Sie ihn von der vorderen Mitte zur Schulter oder zum Armloch.</translation>
    </message>
    <message>
        <source>A slash line starts %1, which is not on the centre front below the lowered neckline.</source>
        <translation>Ein Einschnitt beginnt %1; das ist nicht auf der vorderen Mitte unter dem tiefergelegten Ausschnitt.</translation>
    </message>
    <message>
        <source>Move its start there.</source>
        <translation>Schieben Sie seinen Anfang dorthin.</translation>
    </message>
    <message>
        <source>A slash line ends %1 from the shoulder and the armhole.</source>
        <translation>Ein Einschnitt endet %1 neben Schulter und Armloch.</translation>
    </message>
    <message>
        <source>Move its hinge onto one of them.</source>
        <translation>Schieben Sie seinen Drehpunkt auf eines davon.</translation>
    </message>
    <message>
        <source>A slash line turns away from its hinge %1, so that opened parts would lie on each other.</source>
        <translation>Ein Einschnitt wendet sich %1 von seinem Drehpunkt ab; geöffnete Teile lägen aufeinander.</translation>
    </message>
    <message>
        <source>Draw it so that it comes nearer to the hinge all the way.</source>
        <translation>Zeichnen Sie ihn so, dass er dem Drehpunkt stetig näher kommt.</translation>
    </message>
    <message>
        <source>The slash lines cross: their hinges must follow each other down shoulder and armhole in the same order as their starts down the centre front.</source>
        <translation>Die Einschnitte kreuzen sich: Ihre Drehpunkte müssen an Schulter und Armloch in derselben Folge liegen wie ihre Anfänge auf der vorderen Mitte.</translation>
    </message>
    <message>
        <source>Move them apart.</source>
        <translation>Rücken Sie sie auseinander.</translation>
    </message>
    <message>
        <source>A slash line leaves the front or crosses another edge %1.</source>
        <translation>Ein Einschnitt verlässt das Vorderteil oder kreuzt eine andere Kante %1.</translation>
    </message>
    <message>
        <source>Start the slash lines lower on the centre front, or lower the neckline less.</source>
        <translation>Lassen Sie die Einschnitte weiter unten beginnen, oder legen Sie den Ausschnitt weniger tief.</translation>
    </message>
    <message>
        <source>The stretch of the %1's %2 must be between 1 and 1.5 times its length.</source>
        <translation>Dehnung (%1, %2): zwischen dem 1- und 1,5-Fachen der Länge.</translation>
    </message>
    <message>
        <source>The width of the %1's %2 must be between %3 and %4.</source>
        <translation>Breite (%1, %2): zwischen %3 und %4.</translation>
    </message>
    <message>
        <source>Give it in between.</source>
        <translation>Geben Sie etwas dazwischen an.</translation>
    </message>
    <message>
        <source>%1 mm long, turned in and stitched</source>
        <translation>%1 mm lang, eingeschlagen und gesteppt</translation>
    </message>
    <message>
        <source>%1 mm long, %2 to cut %3 mm long and %4 mm wide</source>
        <translation>%1 mm lang, %2 zuschneiden %3 mm lang und %4 mm breit</translation>
    </message>
    <message>
        <source>The inner panel must reach between 20 mm and %1 down the side seam.</source>
        <translation>Das Innenstück muss zwischen 20 mm und %1 die Seitennaht hinabreichen.</translation>
    </message>
    <message>
        <source>The inner panel's top edge must lie between %1 and %2 below the neck point.</source>
        <translation>Die Oberkante des Innenstücks muss zwischen %1 und %2 unter dem Halspunkt liegen.</translation>
    </message>
    <message>
        <source>The inner panel would cross itself.</source>
        <translation>Das Innenstück würde sich überschneiden.</translation>
    </message>
    <message>
        <source>Change its length.</source>
        <translation>Ändern Sie die Länge.</translation>
    </message>
    <message>
        <source>Change its depth.</source>
        <translation>Ändern Sie die Tiefe.</translation>
    </message>
    <message>
        <source>Set its top edge lower or its hem longer.</source>
        <translation>Legen Sie die Oberkante tiefer oder den Saum länger.</translation>
    </message>
    <message>
        <source>These seams do not fit each other: %1.</source>
        <translation>Diese Nähte passen nicht zueinander: %1.</translation>
    </message>
    <message>
        <source>Make front and back from one base, or say that the top is to be cut all the same.</source>
        <translation>Machen Sie Vorder- und Rückenteil aus einem Grundschnitt, oder sagen Sie, dass trotzdem geschnitten wird.</translation>
    </message>
    <message>
        <source>%1: %2 mm on %3 mm, difference %4 mm, bends %5 and %6 degrees</source>
        <translation>%1: %2 mm auf %3 mm, Unterschied %4 mm, Knicke %5 und %6 Grad</translation>
    </message>
    <message>
        <source>The base</source>
        <translation>Der Grundschnitt</translation>
    </message>
    <message>
        <source>Start from a base front that fits, without allowances.</source>
        <translation>Beginnen Sie mit einem Grundvorderteil, das passt, ohne Zugaben.</translation>
    </message>
    <message>
        <source>Lower the neckline</source>
        <translation>Ausschnitt tieferlegen</translation>
    </message>
    <message>
        <source>Lower the neckline %1 mm at the centre front; the neck point stays.</source>
        <translation>Legen Sie den Ausschnitt in der vorderen Mitte um %1 mm tiefer; der Halspunkt bleibt.</translation>
    </message>
    <message>
        <source>Draw the slash lines</source>
        <translation>Einschnitte zeichnen</translation>
    </message>
    <message>
        <source>Draw them square to the centre front, curving to meet the shoulder seam square, and the last to the armhole notch.</source>
        <translation>Zeichnen Sie sie im rechten Winkel zur vorderen Mitte, im Bogen im rechten Winkel zur Schulternaht, den letzten zum Armlochpasszeichen.</translation>
    </message>
    <message>
        <source>Draw them from the centre front to the shoulder seam, and the last to the armhole notch.</source>
        <translation>Zeichnen Sie sie von der vorderen Mitte zur Schulternaht, den letzten zum Armlochpasszeichen.</translation>
    </message>
    <message>
        <source>Open the parts</source>
        <translation>Teile öffnen</translation>
    </message>
    <message>
        <source>Cut each slash line to, but not through, its hinge on the seam line, and swing the parts open until the neck point stands half the drape from the centre front.</source>
        <translation>Schneiden Sie jeden Einschnitt bis an, nicht durch seinen Drehpunkt auf der Nahtlinie, und schwenken Sie die Teile auf, bis der Halspunkt um die halbe Länge von der vorderen Mitte steht.</translation>
    </message>
    <message>
        <source>New centre front and cowl edge</source>
        <translation>Neue vordere Mitte und Wasserfallkante</translation>
    </message>
    <message>
        <source>Draw the centre front straight down, and the cowl edge from the neck point square to it.</source>
        <translation>Zeichnen Sie die vordere Mitte gerade hinab, und die Wasserfallkante vom Halspunkt im rechten Winkel dazu.</translation>
    </message>
    <message>
        <source>Add the facing</source>
        <translation>Beleg anzeichnen</translation>
    </message>
    <message>
        <source>Mirror the front's top in the cowl edge: the facing's ends are the shoulder's reflection, and finish inside the shoulder seam.</source>
        <translation>Spiegeln Sie die Oberseite des Vorderteils an der Wasserfallkante: Die Enden des Belegs sind das Spiegelbild der Schulter und enden in der Schulternaht.</translation>
    </message>
    <message>
        <source>True the edges</source>
        <translation>Kanten ausgleichen</translation>
    </message>
    <message>
        <source>Fair the kinks that the hinges left without changing a seam's length, and draw the hem square to the centre front.</source>
        <translation>Glätten Sie die Knicke der Drehpunkte, ohne eine Nahtlänge zu ändern, und zeichnen Sie den Saum im rechten Winkel zur vorderen Mitte.</translation>
    </message>
    <message>
        <source>Add the allowances</source>
        <translation>Zugaben anfügen</translation>
    </message>
    <message>
        <source>Add the allowances last, outside the trued seam lines; none on the fold.</source>
        <translation>Fügen Sie die Zugaben zuletzt an, außen an den ausgeglichenen Nahtlinien; keine am Bruch.</translation>
    </message>
    <message>
        <source>The opening runs from 0, closed, to 1, open.</source>
        <translation>Die Öffnung geht von 0, geschlossen, bis 1, offen.</translation>
    </message>
    <message>
        <source>Set it in between.</source>
        <translation>Stellen Sie etwas dazwischen ein.</translation>
    </message>
    <message>
        <source>The draft has %1 steps.</source>
        <translation>Die Konstruktion hat %1 Schritte.</translation>
    </message>
    <message>
        <source>Choose one of them.</source>
        <translation>Wählen Sie einen davon.</translation>
    </message>
    <message>
        <source>There is no piece to print.</source>
        <translation>Es gibt kein Teil zu drucken.</translation>
    </message>
    <message>
        <source>Draft the top first.</source>
        <translation>Zeichnen Sie zuerst das Oberteil.</translation>
    </message>
    <message>
        <source>The PDF could not be made (%1).</source>
        <translation>Das PDF ließ sich nicht machen (%1).</translation>
    </message>
    <message>
        <source>Try again with fewer pieces.</source>
        <translation>Versuchen Sie es mit weniger Teilen.</translation>
    </message>
    <message>
        <source>There is no edge called "%1" to give an allowance to.</source>
        <translation>Es gibt keine Kante „%1“, die eine Zugabe haben könnte.</translation>
    </message>
    <message>
        <source>Edges are %1.</source>
        <translation>Die Kanten sind %1.</translation>
    </message>
    <message>
        <source>The allowance of %1 must be between 0 and %2.</source>
        <translation>Zugabe (%1): zwischen 0 und %2.</translation>
    </message>
    <message>
        <source>With these allowances the cut line of the %1 would cross itself.</source>
        <translation>Mit diesen Zugaben würde sich die Schnittlinie überschneiden (%1).</translation>
    </message>
    <message>
        <source>With these allowances a corner of the %1 would be cut off.</source>
        <translation>Mit diesen Zugaben würde eine Ecke abgeschnitten (%1).</translation>
    </message>
    <message>
        <source>With these allowances a corner of the %1 would run far out to a point.</source>
        <translation>Mit diesen Zugaben liefe eine Ecke weit spitz hinaus (%1).</translation>
    </message>
    <message>
        <source>The %1 of the %2 curves too tightly for an allowance of %3.</source>
        <translation>Zu eng gekrümmt für eine Zugabe von %3: %1 (%2).</translation>
    </message>
    <message>
        <source>With no allowance wider than %1 it works.</source>
        <translation>Mit keiner Zugabe breiter als %1 geht es.</translation>
    </message>
    <message>
        <source>Use narrower allowances on its edges.</source>
        <translation>Nehmen Sie dort schmalere Zugaben.</translation>
    </message>
    <message>
        <source>more than 100 m</source>
        <translation>mehr als 100 m</translation>
    </message>
    <message>
        <source>less than -100 m</source>
        <translation>weniger als -100 m</translation>
    </message>
    <message>
        <source>The outline of the %1 crosses itself %2.</source>
        <translation>Der Umriss überschneidet sich %2 (%1).</translation>
    </message>
    <message>
        <source>Redraw the edges there so that they only meet at their ends.</source>
        <translation>Zeichnen Sie die Kanten dort so, dass sie sich nur an den Enden treffen.</translation>
    </message>
    <message>
        <source>%1: half %2 wide, %3 long; whole %4 across from underarm to underarm</source>
        <translation>%1: halb %2 breit, %3 lang; im Ganzen %4 von Achsel zu Achsel</translation>
    </message>
    <message>
        <source>The %1 measures %2 across from underarm to underarm, a bust girth of %3, which fits hardly any body.</source>
        <translation>%1: misst %2 von Achsel zu Achsel, eine Oberweite von %3, die kaum jemandem passt.</translation>
    </message>
    <message>
        <source>Check the drawing's scale against the printed pattern before you cut.</source>
        <translation>Vergleichen Sie den Maßstab der Zeichnung mit dem gedruckten Schnitt, bevor Sie schneiden.</translation>
    </message>
    <message>
        <source>The neck point of the %1 stands %2 from the centre, where hardly any neck ends.</source>
        <translation>Der Halspunkt steht %2 von der Mitte, wo kaum ein Hals endet (%1).</translation>
    </message>
    <message>
        <source>Check the drawing's scale.</source>
        <translation>Prüfen Sie den Maßstab der Zeichnung.</translation>
    </message>
    <message>
        <source>The piece "%1" has no edge named %2.</source>
        <translation>Das Teil „%1“ hat keine Kante namens %2.</translation>
    </message>
    <message>
        <source>Use a piece that has one, or name the edge so in the drawing.</source>
        <translation>Nehmen Sie ein Teil, das eine hat, oder benennen Sie die Kante in der Zeichnung so.</translation>
    </message>
    <message>
        <source>This is not a complete piece file: %1.</source>
        <translation>Dies ist keine vollständige Teiledatei: %1.</translation>
    </message>
    <message>
        <source>Draft the piece again.</source>
        <translation>Zeichnen Sie das Teil neu.</translation>
    </message>
    <message>
        <source>This piece file was written by another version of the program.</source>
        <translation>Diese Teiledatei stammt von einer anderen Fassung des Programms.</translation>
    </message>
    <message>
        <source>The %1 cannot be right: it should be between %2 and %3.</source>
        <translation>%1: kann nicht stimmen; es sollte zwischen %2 und %3 liegen.</translation>
    </message>
    <message>
        <source>Measure it again, in millimetres.</source>
        <translation>Messen Sie es noch einmal.</translation>
    </message>
    <message>
        <source>bust girth</source>
        <translation>Oberweite</translation>
    </message>
    <message>
        <source>waist girth</source>
        <translation>Taillenweite</translation>
    </message>
    <message>
        <source>hip girth</source>
        <translation>Hüftweite</translation>
    </message>
    <message>
        <source>neck girth</source>
        <translation>Halsumfang</translation>
    </message>
    <message>
        <source>shoulder length</source>
        <translation>Schulterlänge</translation>
    </message>
    <message>
        <source>back waist length</source>
        <translation>Rückenlänge</translation>
    </message>
    <message>
        <source>length from waist to hem</source>
        <translation>Länge von der Taille bis zum Saum</translation>
    </message>
    <message>
        <source>The bust girth of %1 is too small for a shoulder of %2.</source>
        <translation>Die Oberweite von %1 ist zu klein für eine Schulter von %2.</translation>
    </message>
    <message>
        <source>Check both, and the ease.</source>
        <translation>Prüfen Sie beide, und die Zugabe.</translation>
    </message>
    <message>
        <source>The back waist length of %1 leaves no side seam above the waist.</source>
        <translation>Die Rückenlänge von %1 lässt über der Taille keine Seitennaht übrig.</translation>
    </message>
    <message>
        <source>Check it against the bust girth.</source>
        <translation>Prüfen Sie sie gegen die Oberweite.</translation>
    </message>
    <message>
        <source>There is no size "%1".</source>
        <translation>Es gibt keine Größe „%1“.</translation>
    </message>
    <message>
        <source>The sizes are %1 (ASTM D5585-11e1).</source>
        <translation>Die Größen sind %1 (ASTM D5585-11e1).</translation>
    </message>
    <message>
        <source>Give one of them, or the body's own measures.</source>
        <translation>Nehmen Sie eine davon, oder die eigenen Körpermaße.</translation>
    </message>
    <message>
        <source>The neck points' distance must be above 0 and at most 5000 mm.</source>
        <translation>Der Abstand der Halspunkte muss über 0 und höchstens 5000 mm sein.</translation>
    </message>
    <message>
        <source>Check the base.</source>
        <translation>Prüfen Sie den Grundschnitt.</translation>
    </message>
    <message>
        <source>A cowl %1 long cannot hang between neck points %2 apart.</source>
        <translation>Ein %1 langer Wasserfall kann nicht zwischen Halspunkten hängen, die %2 auseinander sind.</translation>
    </message>
    <message>
        <source>Make it longer than %1.</source>
        <translation>Machen Sie ihn länger als %1.</translation>
    </message>
    <message>
        <source>A cowl must hang more than 0 and less than 2500 mm deep.</source>
        <translation>Ein Wasserfall muss mehr als 0 und weniger als 2500 mm tief fallen.</translation>
    </message>
    <message>
        <source>Measure from the neck point's height down to where its lowest point should be.</source>
        <translation>Messen Sie von der Höhe des Halspunkts hinab bis dorthin, wo der tiefste Punkt liegen soll.</translation>
    </message>
    <message>
        <source>The edge "%1" reaches further than 20 m, so the drawing's size is not real.</source>
        <translation>Die Kante „%1“ reicht weiter als 20 m; die Größe der Zeichnung ist also nicht echt.</translation>
    </message>
    <message>
        <source>Set its width and height in millimetres and check its viewBox.</source>
        <translation>Setzen Sie Breite und Höhe in Millimetern und prüfen Sie die viewBox.</translation>
    </message>
    <message>
        <source>The id "%1" is on a &lt;%2&gt;, not on a path.</source>
        <translation>Die id „%1“ steht an einem &lt;%2&gt;, nicht an einem Pfad.</translation>
    </message>
    <message>
        <source>Give the id to the path that draws that edge.</source>
        <translation>Geben Sie die id dem Pfad, der diese Kante zeichnet.</translation>
    </message>
    <message>
        <source>In the edge "%1" %2.</source>
        <translation>In der Kante „%1“: %2.</translation>
    </message>
    <message>
        <source>Draw that edge again and save as plain SVG.</source>
        <translation>Zeichnen Sie diese Kante neu und sichern Sie als einfaches SVG.</translation>
    </message>
    <message>
        <source>The edge "%1" is empty.</source>
        <translation>Die Kante „%1“ ist leer.</translation>
    </message>
    <message>
        <source>Draw it as one path from end to end.</source>
        <translation>Zeichnen Sie sie als einen Pfad von Ende zu Ende.</translation>
    </message>
    <message>
        <source>The edge "%1" is in %2 separate pieces.</source>
        <translation>Die Kante „%1“ besteht aus %2 getrennten Stücken.</translation>
    </message>
    <message>
        <source>Join them into one path.</source>
        <translation>Verbinden Sie sie zu einem Pfad.</translation>
    </message>
    <message>
        <source>The edge "%1" has no length.</source>
        <translation>Die Kante „%1“ hat keine Länge.</translation>
    </message>
    <message>
        <source>Draw it from end to end.</source>
        <translation>Zeichnen Sie sie von Ende zu Ende.</translation>
    </message>
    <message>
        <source>The edge "%1" ends where it starts.</source>
        <translation>Die Kante „%1“ endet, wo sie beginnt.</translation>
    </message>
    <message>
        <source>An edge is an open line: split the outline at its corners into six paths.</source>
        <translation>Eine Kante ist eine offene Linie: Teilen Sie den Umriss an den Ecken in sechs Pfade.</translation>
    </message>
    <message>
        <source>Two %1 have the id "%2".</source>
        <translation>Zweimal dieselbe id „%2“ (%1).</translation>
    </message>
    <message>
        <source>paths</source>
        <translation>Pfade</translation>
    </message>
    <message>
        <source>circles</source>
        <translation>Kreise</translation>
    </message>
    <message>
        <source>Keep one, or give the other an id of its own.</source>
        <translation>Behalten Sie eine, oder geben Sie der anderen eine eigene id.</translation>
    </message>
    <message>
        <source>The drawing's groups are nested too deeply.</source>
        <translation>Die Gruppen der Zeichnung sind zu tief verschachtelt.</translation>
    </message>
    <message>
        <source>Ungroup them and save again.</source>
        <translation>Heben Sie die Gruppierung auf und sichern Sie neu.</translation>
    </message>
    <message>
        <source>This is not a readable SVG file (%1 at character %2).</source>
        <translation>Dies ist keine lesbare SVG-Datei (%1 bei Zeichen %2).</translation>
    </message>
    <message>
        <source>Save the pattern as plain SVG and try again.</source>
        <translation>Sichern Sie den Schnitt als einfaches SVG und versuchen Sie es noch einmal.</translation>
    </message>
    <message>
        <source>This file is XML but no SVG drawing.</source>
        <translation>Diese Datei ist XML, aber keine SVG-Zeichnung.</translation>
    </message>
    <message>
        <source>Its id "%1" is perhaps meant to be %2.</source>
        <translation>Die id „%1“ soll vielleicht %2 heißen.</translation>
    </message>
    <message>
        <source>The drawing has no path with the id %1.</source>
        <translation>Die Zeichnung hat keinen Pfad mit der id %1.</translation>
    </message>
    <message>
        <source>Give each edge's path its role as id: %1, neckline, shoulder, armhole, side-seam, hem.</source>
        <translation>Geben Sie dem Pfad jeder Kante seine Rolle als id: %1, neckline, shoulder, armhole, side-seam, hem.</translation>
    </message>
    <message>
        <source>The %1 and the %2 do not meet: their ends are %3 apart %4.</source>
        <translation>Zwei Kanten treffen sich nicht (%1, %2): Ihre Enden sind %3 auseinander %4.</translation>
    </message>
    <message>
        <source>near %1 across and %2 down the drawing</source>
        <translation>bei %1 quer und %2 abwärts in der Zeichnung</translation>
    </message>
    <message>
        <source>Bring the two ends together.</source>
        <translation>Führen Sie die beiden Enden zusammen.</translation>
    </message>
    <message>
        <source>This base would be %1 wide and %2 long, which is no half front of a top.</source>
        <translation>Dieser Grundschnitt wäre %1 breit und %2 lang; das ist kein halbes Vorderteil.</translation>
    </message>
    <message>
        <source>Check the drawing's width, height and viewBox against the printed pattern.</source>
        <translation>Vergleichen Sie Breite, Höhe und viewBox der Zeichnung mit dem gedruckten Schnitt.</translation>
    </message>
    <message>
        <source>The drill mark "%1" lies outside the piece, %2.</source>
        <translation>Die Bohrmarkierung „%1“ liegt außerhalb des Teils, %2.</translation>
    </message>
    <message>
        <source>Move its circle inside the seam lines.</source>
        <translation>Schieben Sie ihren Kreis innerhalb der Nahtlinien.</translation>
    </message>
    <message>
        <source>The centre front is not straight: it strays %1.</source>
        <translation>Die vordere Mitte ist nicht gerade: Sie weicht um %1 ab.</translation>
    </message>
    <message>
        <source>A front cut on the fold needs a straight centre front; draw it as one straight line.</source>
        <translation>Ein Vorderteil im Bruch braucht eine gerade vordere Mitte; zeichnen Sie sie als eine gerade Linie.</translation>
    </message>
    <message>
        <source>The %1 crosses the centre front by %2.</source>
        <translation>Über die vordere Mitte hinaus reicht um %2: %1.</translation>
    </message>
    <message>
        <source>Draw the half front on one side of its centre front.</source>
        <translation>Zeichnen Sie das halbe Vorderteil auf einer Seite seiner Mitte.</translation>
    </message>
    <message>
        <source>The armhole-notch lies %1 from the armhole.</source>
        <translation>Das Armlochpasszeichen liegt %1 neben dem Armloch.</translation>
    </message>
    <message>
        <source>Move the circle onto the armhole line.</source>
        <translation>Schieben Sie den Kreis auf die Armlochlinie.</translation>
    </message>
    <message>
        <source>The edges do not run around the front in order: centre front, hem, side seam, armhole, shoulder, neckline.</source>
        <translation>Die Kanten laufen nicht in der Reihe um das Vorderteil: vordere Mitte, Saum, Seitennaht, Armloch, Schulter, Ausschnitt.</translation>
    </message>
    <message>
        <source>Check which path has which id.</source>
        <translation>Prüfen Sie, welcher Pfad welche id hat.</translation>
    </message>
    <message>
        <source>The neck point should be the highest end of the front and the shoulder above the underarm.</source>
        <translation>Der Halspunkt sollte das höchste Ende des Vorderteils sein und die Schulter über der Achsel liegen.</translation>
    </message>
    <message>
        <source>Check that neckline, shoulder and armhole have the right ids.</source>
        <translation>Prüfen Sie, ob Ausschnitt, Schulter und Armloch die richtigen ids haben.</translation>
    </message>
    <message>
        <source>In this drawing %1.</source>
        <translation>In dieser Zeichnung: %1.</translation>
    </message>
    <message>
        <source>Ungroup the pattern and save as plain SVG.</source>
        <translation>Heben Sie die Gruppierung auf und sichern Sie als einfaches SVG.</translation>
    </message>
    <message>
        <source>line %1</source>
        <translation>Linie %1</translation>
    </message>
    <message>
        <source>This is not a readable SVG drawing.</source>
        <translation>Dies ist keine lesbare SVG-Zeichnung.</translation>
    </message>
    <message>
        <source>Save the pattern as plain SVG in real size and try again.</source>
        <translation>Sichern Sie den Schnitt als einfaches SVG in wahrer Größe und versuchen Sie es noch einmal.</translation>
    </message>
    <message>
        <source>There is no line in this drawing.</source>
        <translation>In dieser Zeichnung ist keine Linie.</translation>
    </message>
    <message>
        <source>Draw each edge of the pattern as a path of its own and save as plain SVG.</source>
        <translation>Zeichnen Sie jede Kante des Schnitts als eigenen Pfad und sichern Sie als einfaches SVG.</translation>
    </message>
    <message>
        <source>a path must begin with M</source>
        <translation>ein Pfad muss mit M beginnen</translation>
    </message>
    <message>
        <source>the path data goes wrong at character %1: %2</source>
        <translation>die Pfaddaten stimmen ab Zeichen %1 nicht: %2</translation>
    </message>
    <message>
        <source>a number is missing or too large</source>
        <translation>eine Zahl fehlt oder ist zu groß</translation>
    </message>
    <message>
        <source>an arc flag must be 0 or 1</source>
        <translation>ein Bogenzeichen muss 0 oder 1 sein</translation>
    </message>
    <message>
        <source>a number is missing after a comma</source>
        <translation>nach einem Komma fehlt eine Zahl</translation>
    </message>
    <message>
        <source>"%1" is no path command</source>
        <translation>„%1“ ist kein Pfadbefehl</translation>
    </message>
    <message>
        <source>the transform "%1" is not one that SVG knows</source>
        <translation>die Transformation „%1“ kennt SVG nicht</translation>
    </message>
    <message>
        <source>Set the drawing's width and height in millimetres in the document settings.</source>
        <translation>Setzen Sie Breite und Höhe der Zeichnung in den Dokumenteinstellungen in Millimetern.</translation>
    </message>
    <message>
        <source>The drawing's %1 "%2" is not a length.</source>
        <translation>Keine Länge an der Zeichnung: %1 „%2“.</translation>
    </message>
    <message>
        <source>The drawing's %1 is given in per cent, which is no real size.</source>
        <translation>In Prozent angegeben, also keine echte Größe: %1 der Zeichnung.</translation>
    </message>
    <message>
        <source>The drawing's %1 "%2" has a unit that is no real length (mm, cm, in, pt, pc or px).</source>
        <translation>Die Einheit ist keine echte Länge (mm, cm, in, pt, pc oder px): %1 „%2“.</translation>
    </message>
    <message>
        <source>The drawing's %1 is not above zero.</source>
        <translation>Nicht größer als null: %1 der Zeichnung.</translation>
    </message>
    <message>
        <source>width</source>
        <translation>Breite</translation>
    </message>
    <message>
        <source>height</source>
        <translation>Höhe</translation>
    </message>
    <message>
        <source>The drawing has no real size.</source>
        <translation>Die Zeichnung hat keine echte Größe.</translation>
    </message>
    <message>
        <source>The drawing's size is in pixels, which are taken as 96 to the inch; some programs write 72 or 90.</source>
        <translation>Die Größe der Zeichnung ist in Pixeln, gerechnet mit 96 auf den Zoll; manche Programme schreiben 72 oder 90.</translation>
    </message>
    <message>
        <source>Compare the base's size with the printed pattern, or set width and height in mm.</source>
        <translation>Vergleichen Sie die Größe mit dem gedruckten Schnitt, oder setzen Sie Breite und Höhe in mm.</translation>
    </message>
    <message>
        <source>The drawing's viewBox is not four numbers.</source>
        <translation>Die viewBox der Zeichnung besteht nicht aus vier Zahlen.</translation>
    </message>
    <message>
        <source>Save the drawing again as plain SVG.</source>
        <translation>Sichern Sie die Zeichnung neu als einfaches SVG.</translation>
    </message>
    <message>
        <source>The drawing's viewBox is not four numbers with a size above zero.</source>
        <translation>Die viewBox der Zeichnung besteht nicht aus vier Zahlen mit einer Größe über null.</translation>
    </message>
    <message>
        <source>Save it again as plain SVG.</source>
        <translation>Sichern Sie sie neu als einfaches SVG.</translation>
    </message>
    <message>
        <source>By its width a unit of the drawing is %1 mm, by its height %2 mm, so its true size is not certain.</source>
        <translation>Nach der Breite ist eine Einheit der Zeichnung %1 mm, nach der Höhe %2 mm; ihre wahre Größe ist also nicht sicher.</translation>
    </message>
    <message>
        <source>Its viewBox then needs the same proportions.</source>
        <translation>Die viewBox braucht dann dieselben Verhältnisse.</translation>
    </message>
    <message>
        <source>BEFORE YOU CUT</source>
        <translation>BEVOR SIE SCHNEIDEN</translation>
    </message>
    <message>
        <source>DO NOT CUT NOW</source>
        <translation>JETZT NICHT SCHNEIDEN</translation>
    </message>
    <message>
        <source>LAY THE PIECE</source>
        <translation>TEIL AUSLEGEN</translation>
    </message>
    <message>
        <source>ALL CUT</source>
        <translation>ALLES GESCHNITTEN</translation>
    </message>
    <message>
        <source>STROKE %1 OF %2: %3</source>
        <translation>ZUG %1 VON %2: %3</translation>
    </message>
    <message>
        <source>FOLD OF THE CLOTH</source>
        <translation>STOFFBRUCH</translation>
    </message>
    <message>
        <source>FACING</source>
        <translation>BELEG</translation>
    </message>
    <message>
        <source>TURNS HERE</source>
        <translation>HIER UMKLAPPEN</translation>
    </message>
    <message>
        <source>cut on the fold</source>
        <translation>im Bruch schneiden</translation>
    </message>
    <message>
        <source>cut once</source>
        <translation>einmal schneiden</translation>
    </message>
    <message>
        <source>finish</source>
        <translation>fertig mit</translation>
    </message>
    <message>
        <source>with shears</source>
        <translation>der Schere</translation>
    </message>
    <message>
        <source>shears</source>
        <translation>Schere</translation>
    </message>
    <message>
        <source>%1 mm blade</source>
        <translation>Klinge %1 mm</translation>
    </message>
    <message>
        <source>space: read on</source>
        <translation>Leertaste: weiterlesen</translation>
    </message>
    <message>
        <source>space: I have read this</source>
        <translation>Leertaste: gelesen</translation>
    </message>
    <message>
        <source>space: the camera learns the table</source>
        <translation>Leertaste: die Kamera lernt den Tisch</translation>
    </message>
    <message>
        <source>R: the camera looks for tags and marks</source>
        <translation>R: die Kamera sucht die Marken</translation>
    </message>
    <message>
        <source>O once more: cut all the same; it is written down</source>
        <translation>O noch einmal: trotzdem schneiden; es wird vermerkt</translation>
    </message>
    <message>
        <source>any other key: no</source>
        <translation>jede andere Taste: nein</translation>
    </message>
    <message>
        <source>O: cut all the same</source>
        <translation>O: trotzdem schneiden</translation>
    </message>
    <message>
        <source>Esc ends; what is cut is kept</source>
        <translation>Esc endet; Geschnittenes bleibt vermerkt</translation>
    </message>
    <message>
        <source>x %1  y %2 mm  turn %3°</source>
        <translation>x %1  y %2 mm  gedreht %3°</translation>
    </message>
    <message>
        <source>x %1  y %2 mm  turn %3°  face down</source>
        <translation>x %1  y %2 mm  gedreht %3°  links oben</translation>
    </message>
    <message>
        <source>FIND THE PIECE AGAIN</source>
        <translation>DAS TEIL WIEDERFINDEN</translation>
    </message>
    <message>
        <source>part %1 of %2</source>
        <translation>Stück %1 von %2</translation>
    </message>
    <message>
        <source>part %1 of %2: find it again by your %3 marks</source>
        <translation>Stück %1 von %2: mit Ihren %3 Zeichen wiederfinden</translation>
    </message>
    <message>
        <source>part %1 of %2: chalk the crosses and their numbers, then N</source>
        <translation>Stück %1 von %2: Kreuze mit Nummern ankreiden, dann N</translation>
    </message>
    <message>
        <source>found again, its cut lines within %1</source>
        <translation>wiedergefunden, Schnittlinien auf %1</translation>
    </message>
    <message>
        <source>moved by hand, not where its marks say</source>
        <translation>von Hand verschoben, nicht wie die Zeichen sagen</translation>
    </message>
    <message>
        <source>click on the marks by number, two at least</source>
        <translation>Zeichen der Nummer nach anklicken, zwei mindestens</translation>
    </message>
    <message>
        <source>or move the cloth until they meet the crosses</source>
        <translation>oder den Stoff schieben, bis sie auf den Kreuzen liegen</translation>
    </message>
    <message>
        <source>space: all marks meet their crosses</source>
        <translation>Leertaste: alle Zeichen liegen auf ihren Kreuzen</translation>
    </message>
    <message>
        <source>space: these are all</source>
        <translation>Leertaste: das sind alle</translation>
    </message>
    <message>
        <source>page up: back to the part before</source>
        <translation>Bild auf: zurück zum Stück davor</translation>
    </message>
    <message>
        <source>page up: that mark again</source>
        <translation>Bild auf: dieses Zeichen noch einmal</translation>
    </message>
    <message>
        <source>page up: find it anew</source>
        <translation>Bild auf: neu wiederfinden</translation>
    </message>
    <message>
        <source>arrows or mouse move it, Q E turn</source>
        <translation>Pfeile oder Maus schieben, Q E drehen</translation>
    </message>
    <message>
        <source>arrows or mouse move it, Q E turn, F flips</source>
        <translation>Pfeile oder Maus schieben, Q E drehen, F wendet</translation>
    </message>
    <message>
        <source>shift: 10 mm and 5°, ctrl: 0.1 mm and 0.02°</source>
        <translation>Umschalt: 10 mm und 5°, Strg: 0,1 mm und 0,02°</translation>
    </message>
    <message>
        <source>H: laid-out place, G: line along the grain</source>
        <translation>H: Anfangsplatz, G: Linie im Fadenlauf</translation>
    </message>
    <message>
        <source>space or page down: cut</source>
        <translation>Leertaste oder Bild ab: schneiden</translation>
    </message>
    <message>
        <source>L hides this, Esc ends</source>
        <translation>L blendet dies aus, Esc endet</translation>
    </message>
    <message>
        <source>stop at the bar, finish with shears</source>
        <translation>am Balken halten, Schere nehmen</translation>
    </message>
    <message>
        <source>then: %1</source>
        <translation>dann: %1</translation>
    </message>
    <message>
        <source>%1 min at the table</source>
        <translation>%1 min am Tisch</translation>
    </message>
    <message>
        <source>space or page down: it is cut</source>
        <translation>Leertaste oder Bild ab: geschnitten</translation>
    </message>
    <message>
        <source>page up: back, U: lay it anew</source>
        <translation>Bild auf: zurück, U: neu auslegen</translation>
    </message>
    <message>
        <source>K: band, G: line along the grain</source>
        <translation>K: Schraffur, G: Linie im Fadenlauf</translation>
    </message>
    <message>
        <source>N: next part of the piece</source>
        <translation>N: nächstes Stück des Teils</translation>
    </message>
    <message>
        <source>R: the camera looks anew</source>
        <translation>R: die Kamera sucht neu</translation>
    </message>
    <message>
        <source>At its laid-out place.</source>
        <translation>Am Anfangsplatz.</translation>
    </message>
    <message>
        <source>Esc once more ends here; what is cut is kept.</source>
        <translation>Noch einmal Esc endet hier; Geschnittenes bleibt vermerkt.</translation>
    </message>
    <message>
        <source>Close the blade whenever you put it down.</source>
        <translation>Schließen Sie die Klinge, sobald Sie sie weglegen.</translation>
    </message>
    <message>
        <source>Cut away from your body.</source>
        <translation>Schneiden Sie vom Körper weg.</translation>
    </message>
    <message>
        <source>Keep the other hand outside the hatched band.</source>
        <translation>Halten Sie die andere Hand außerhalb der Schraffur.</translation>
    </message>
    <message>
        <source>No children and no pets at the table.</source>
        <translation>Keine Kinder und Tiere am Tisch.</translation>
    </message>
    <message>
        <source>Keep your eyes out of the projector's beam.</source>
        <translation>Schauen Sie nicht in den Strahl des Projektors.</translation>
    </message>
    <message>
        <source>Projector and camera hang firmly, cables out of the way.</source>
        <translation>Projektor und Kamera hängen fest, Kabel sind aus dem Weg.</translation>
    </message>
    <message>
        <source>What the makers of blade, mat and projector say comes first.</source>
        <translation>Was die Hersteller von Klinge, Matte und Projektor sagen, geht vor.</translation>
    </message>
    <message>
        <source>This light is an aid: it does not see your hand.</source>
        <translation>Dieses Licht ist eine Hilfe: Es sieht Ihre Hand nicht.</translation>
    </message>
    <message>
        <source>Click on your marks, or move the cloth until they meet the crosses and press space.</source>
        <translation>Klicken Sie Ihre Zeichen an, oder schieben Sie den Stoff, bis sie auf den Kreuzen liegen, und drücken Sie die Leertaste.</translation>
    </message>
    <message>
        <source>Now mark %1.</source>
        <translation>Jetzt Zeichen %1.</translation>
    </message>
    <message>
        <source>Or space: these are all.</source>
        <translation>Oder Leertaste: das sind alle.</translation>
    </message>
    <message>
        <source>Mark %1: point it out again.</source>
        <translation>Zeichen %1: klicken Sie es noch einmal an.</translation>
    </message>
    <message>
        <source>Do all your marks lie on their crosses?</source>
        <translation>Liegen alle Ihre Zeichen auf ihren Kreuzen?</translation>
    </message>
    <message>
        <source>Space once more: yes.</source>
        <translation>Noch einmal Leertaste: ja.</translation>
    </message>
    <message>
        <source>Taken as met.</source>
        <translation>So angenommen.</translation>
    </message>
    <message>
        <source>Found again: marks %1 mm off.</source>
        <translation>Wiedergefunden: Zeichen um %1 mm daneben.</translation>
    </message>
    <message>
        <source>The cut lines of this part lie within %1.</source>
        <translation>Die Schnittlinien dieses Stücks liegen auf %1 genau.</translation>
    </message>
    <message>
        <source>They were taken as marks %1.</source>
        <translation>Sie gelten als Zeichen %1.</translation>
    </message>
    <message>
        <source>As it was before N.</source>
        <translation>Wie vor N.</translation>
    </message>
    <message>
        <source>If the cloth was moved meanwhile, lay its marks on the crosses again.</source>
        <translation>Wurde der Stoff inzwischen bewegt, legen Sie seine Zeichen wieder auf die Kreuze.</translation>
    </message>
    <message>
        <source>This part has yet to be found again.</source>
        <translation>Dieses Stück ist noch nicht wiedergefunden.</translation>
    </message>
    <message>
        <source>Page up goes back to the part before.</source>
        <translation>Bild auf führt zum Stück davor zurück.</translation>
    </message>
    <message>
        <source>Something of this part is cut already, so it stays where it is.</source>
        <translation>Von diesem Stück ist schon etwas geschnitten, darum bleibt es, wo es ist.</translation>
    </message>
    <message>
        <source>The parts before lie this way up, so this one does.</source>
        <translation>Die Stücke davor liegen mit dieser Seite nach oben, also auch dieses.</translation>
    </message>
    <message>
        <source>The parts were divided anew.</source>
        <translation>Die Stücke wurden neu eingeteilt.</translation>
    </message>
    <message>
        <source>No part of the piece lies in the light.</source>
        <translation>Kein Stück des Teils liegt im Licht.</translation>
    </message>
    <message>
        <source>Leave --at out to lay it in the middle.</source>
        <translation>Legen Sie es in die Mitte.</translation>
    </message>
    <message>
        <source>This is not a cutting record of this program.</source>
        <translation>Dies ist kein Schneideprotokoll dieses Programms.</translation>
    </message>
    <message>
        <source>Choose another file name for it.</source>
        <translation>Wählen Sie einen anderen Dateinamen.</translation>
    </message>
    <message>
        <source>The cutting record contradicts itself.</source>
        <translation>Das Schneideprotokoll widerspricht sich.</translation>
    </message>
    <message>
        <source>The cutting record is damaged.</source>
        <translation>Das Schneideprotokoll ist beschädigt.</translation>
    </message>
    <message>
        <source>Delete it to begin the piece anew.</source>
        <translation>Löschen Sie es, um das Teil neu zu beginnen.</translation>
    </message>
    <message>
        <source>It is not known which strokes are cut: an earlier version wrote the record and only counted them.</source>
        <translation>Es ist nicht bekannt, welche Züge geschnitten sind: Eine frühere Version hat das Protokoll geschrieben und sie nur gezählt.</translation>
    </message>
    <message>
        <source>Begin the piece with a new record, lay it to the cut edges, and say of each stroke that is cut already that it is cut.</source>
        <translation>Beginnen Sie das Teil mit einem neuen Protokoll, legen Sie es an die geschnittenen Kanten und sagen Sie von jedem schon geschnittenen Zug, dass er geschnitten ist.</translation>
    </message>
    <message>
        <source>A stroke along the %1 is cut by the record, but this piece has no such stroke.</source>
        <translation>Nach dem Protokoll ist ein Zug entlang %1 geschnitten, aber dieses Teil hat keinen solchen.</translation>
    </message>
    <message>
        <source>Go on with the piece as it was then, or begin this one with a new record.</source>
        <translation>Schneiden Sie das Teil weiter, wie es damals war, oder beginnen Sie dieses mit einem neuen Protokoll.</translation>
    </message>
    <message>
        <source>%1 of %2 strokes are cut and the piece lies at %3, not where --at or --mirrored says.</source>
        <translation>%1 von %2 Zügen sind geschnitten und das Teil liegt bei %3, nicht wo --at oder --mirrored sagt.</translation>
    </message>
    <message>
        <source>Leave them out, and lay it anew with U where the cloth was moved.</source>
        <translation>Lassen Sie beides weg und legen Sie das Teil mit U neu an, wo der Stoff verschoben wurde.</translation>
    </message>
    <message>
        <source>The calibration is dated later than this computer's clock, so its age is not known.</source>
        <translation>Die Kalibrierung trägt ein späteres Datum, als die Uhr dieses Rechners zeigt; ihr Alter ist also nicht bekannt.</translation>
    </message>
    <message>
        <source>Set the clock right, or calibrate again.</source>
        <translation>Stellen Sie die Uhr richtig oder kalibrieren Sie neu.</translation>
    </message>
    <message>
        <source>A check by hand did not agree with this calibration: from %1 to %2 the tape read %3 mm where %4 mm are drawn.</source>
        <translation>Eine Prüfung von Hand stimmte nicht mit dieser Kalibrierung überein: Von %1 bis %2 las das Maßband %3 mm, gezeichnet sind %4 mm.</translation>
    </message>
    <message>
        <source>Measure the same again; if it stays so, calibrate again.</source>
        <translation>Messen Sie dasselbe noch einmal; bleibt es so, kalibrieren Sie neu.</translation>
    </message>
    <message>
        <source>Mended by the tape, the table would still not agree with it: from %1 to %2 it reads %3 mm where %4 mm would be drawn.</source>
        <translation>Auch nach dem Maßband gerichtet stimmte der Tisch nicht mit ihm überein: Von %1 bis %2 liest es %3 mm, gezeichnet würden %4 mm.</translation>
    </message>
    <message>
        <source>The table was calibrated anew since this piece was begun, so the strokes left may not meet those that are cut.</source>
        <translation>Seit dieses Teil begonnen wurde, ist der Tisch neu kalibriert; die übrigen Züge treffen vielleicht nicht auf die geschnittenen.</translation>
    </message>
    <message>
        <source>Lay the piece to the cut edges first.</source>
        <translation>Legen Sie das Teil zuerst an die geschnittenen Kanten.</translation>
    </message>
    <message>
        <source>The calibration does not say when it was made.</source>
        <translation>Die Kalibrierung sagt nicht, wann sie gemacht wurde.</translation>
    </message>
    <message>
        <source>The table was calibrated more than %1 hours ago and anything may have moved since.</source>
        <translation>Der Tisch wurde vor mehr als %1 Stunden kalibriert; seither kann sich alles bewegt haben.</translation>
    </message>
    <message>
        <source>The piece is %1 deep as it lies and the light only %2.</source>
        <translation>Das Teil ist, wie es liegt, %1 tief und das Licht nur %2.</translation>
    </message>
    <message>
        <source>Turn it so that its long side lies across the table.</source>
        <translation>Drehen Sie es so, dass seine lange Seite quer über den Tisch liegt.</translation>
    </message>
    <message>
        <source>The light is too narrow to show this piece part by part.</source>
        <translation>Das Licht ist zu schmal, um dieses Teil stückweise zu zeigen.</translation>
    </message>
    <message>
        <source>Raise the projector.</source>
        <translation>Hängen Sie den Projektor höher.</translation>
    </message>
    <message>
        <source>Two marks at least are needed to find the piece again.</source>
        <translation>Um das Teil wiederzufinden, braucht es mindestens zwei Zeichen.</translation>
    </message>
    <message>
        <source>Point out one more.</source>
        <translation>Zeigen Sie noch eines.</translation>
    </message>
    <message>
        <source>The marks are too close together to turn the piece by.</source>
        <translation>Die Zeichen sind zu nah beisammen, um das Teil danach zu drehen.</translation>
    </message>
    <message>
        <source>Point out some that are farther apart.</source>
        <translation>Klicken Sie welche an, die weiter auseinander liegen.</translation>
    </message>
    <message>
        <source>The marks fit only with the piece turned by %1 degrees.</source>
        <translation>Die Zeichen passen nur, wenn das Teil um %1 Grad gedreht liegt.</translation>
    </message>
    <message>
        <source>Turn the cloth as it lay before and point them out again.</source>
        <translation>Drehen Sie den Stoff, wie er vorher lag, und klicken Sie sie noch einmal an.</translation>
    </message>
    <message>
        <source>It is not clear which marks these are.</source>
        <translation>Es ist nicht klar, welche Zeichen das sind.</translation>
    </message>
    <message>
        <source>Point out all of them, in the order of their numbers.</source>
        <translation>Klicken Sie alle an, der Nummer nach.</translation>
    </message>
    <message>
        <source>By these marks a cut line of this part may be %1 off, more than %2.</source>
        <translation>Nach diesen Zeichen kann eine Schnittlinie dieses Stücks um %1 daneben liegen, mehr als %2.</translation>
    </message>
    <message>
        <source>Smooth out the cloth and point out all marks, right on their middles.</source>
        <translation>Streichen Sie den Stoff glatt und klicken Sie alle Zeichen genau in der Mitte an.</translation>
    </message>
    <message>
        <source>The piece is too narrow where its parts meet to be found again by chalk marks.</source>
        <translation>Das Teil ist dort, wo die Stücke sich treffen, zu schmal, um es an Kreidezeichen wiederzufinden.</translation>
    </message>
    <message>
        <source>The piece is too long to be found again part by part: a cut line could be %1 off, more than %2.</source>
        <translation>Das Teil ist zu lang, um Stück für Stück wiedergefunden zu werden: Eine Schnittlinie könnte um %1 daneben liegen, mehr als %2.</translation>
    </message>
    <message>
        <source>Raise the projector so that the light shows more of it at once.</source>
        <translation>Hängen Sie den Projektor höher, damit das Licht mehr davon auf einmal zeigt.</translation>
    </message>
    <message>
        <source>The marks are %1 off where they should be, more than %2.</source>
        <translation>Die Zeichen liegen %1 neben ihrem Platz, mehr als %2.</translation>
    </message>
    <message>
        <source>The cloth is stretched or a mark is wrong: smooth it out and point again.</source>
        <translation>Der Stoff ist gedehnt, oder ein Zeichen ist falsch: Streichen Sie ihn glatt und zeigen Sie noch einmal.</translation>
    </message>
    <message>
        <source>The projector's screen %1 now has %2 pixels, so nothing is drawn.</source>
        <translation>Der Bildschirm %1 des Projektors hat jetzt %2 Pixel, darum wird nichts gezeichnet.</translation>
    </message>
    <message>
        <source>Set it back to %1; the work is kept.</source>
        <translation>Stellen Sie ihn auf %1 zurück; die Arbeit bleibt erhalten.</translation>
    </message>
    <message>
        <source>The projector's screen %1 is gone.</source>
        <translation>Der Bildschirm %1 des Projektors ist weg.</translation>
    </message>
    <message>
        <source>Plug it in or switch it on again; the work is kept.</source>
        <translation>Stecken Sie ihn ein oder schalten Sie ihn ein; die Arbeit bleibt erhalten.</translation>
    </message>
    <message>
        <source>There is no screen "%1".</source>
        <translation>Es gibt keinen Bildschirm „%1“.</translation>
    </message>
    <message>
        <source>Plug in and switch on the projector, then choose one of: %1.</source>
        <translation>Stecken Sie den Projektor ein, schalten Sie ihn ein, und wählen Sie dann einen von: %1.</translation>
    </message>
    <message>
        <source>It is not clear which screen is the projector.</source>
        <translation>Es ist nicht klar, welcher Bildschirm der Projektor ist.</translation>
    </message>
    <message>
        <source>Name it with --screen: %1.</source>
        <translation>Wählen Sie ihn: %1.</translation>
    </message>
    <message>
        <source>The screen %1 shows %2 pixels but the table was calibrated for %3, so lines would land in wrong places.</source>
        <translation>Der Bildschirm %1 zeigt %2 Pixel, der Tisch wurde aber für %3 kalibriert; Linien lägen falsch.</translation>
    </message>
    <message>
        <source>Set the screen to %1 or choose the projector's screen: %2.</source>
        <translation>Stellen Sie den Bildschirm auf %1, oder wählen Sie den des Projektors: %2.</translation>
    </message>
    <message>
        <source>This is not the %1 x %2 pixel screen of the calibration: nothing is drawn.</source>
        <translation>Dies ist nicht der Bildschirm mit %1 x %2 Pixeln, für den kalibriert wurde: Es wird nichts gezeichnet.</translation>
    </message>
    <message>
        <source>The table is not watched yet.</source>
        <translation>Der Tisch wird noch nicht beobachtet.</translation>
    </message>
    <message>
        <source>The camera has not seen the table at rest: something moves in its view, or lamps flicker.</source>
        <translation>Die Kamera hat den Tisch nicht in Ruhe gesehen: Etwas bewegt sich, oder Lampen flackern.</translation>
    </message>
    <message>
        <source>The camera sends no pictures.</source>
        <translation>Die Kamera schickt keine Bilder.</translation>
    </message>
    <message>
        <source>Nobody watches the table.</source>
        <translation>Niemand beobachtet den Tisch.</translation>
    </message>
    <message>
        <source>Lay the cloth clear of the marks of light and of the tags, then stand clear for some seconds.</source>
        <translation>Legen Sie den Stoff neben die Marken, und treten Sie dann einige Sekunden zurück.</translation>
    </message>
    <message>
        <source>R: the camera learns it.</source>
        <translation>R: die Kamera lernt ihn.</translation>
    </message>
    <message>
        <source>Tags and marks may tell where all is now: let the camera look, and stand clear for some seconds.</source>
        <translation>Die Marken sagen vielleicht, wo jetzt alles ist: Lassen Sie die Kamera schauen, und treten Sie einige Sekunden zurück.</translation>
    </message>
    <message>
        <source>Cut in spite of a move.</source>
        <translation>Trotz einer Bewegung geschnitten.</translation>
    </message>
    <message>
        <source>R: the camera looks again.</source>
        <translation>R: die Kamera schaut noch einmal.</translation>
    </message>
    <message>
        <source>The lines come back when it sees enough.</source>
        <translation>Die Linien kommen wieder, wenn sie genug sieht.</translation>
    </message>
    <message>
        <source>A blade of this size does not reach through this cloth.</source>
        <translation>Eine Klinge dieser Größe reicht nicht durch diesen Stoff.</translation>
    </message>
    <message>
        <source>Choose a larger blade.</source>
        <translation>Wählen Sie eine größere.</translation>
    </message>
    <message>
        <source>This stroke runs into the fold: check how the cloth lies.</source>
        <translation>Dieser Zug läuft in den Bruch: Prüfen Sie, wie der Stoff liegt.</translation>
    </message>
    <message>
        <source>Begins and ends at the fold: cut across it, through both layers, never along it.</source>
        <translation>Beginnt und endet am Bruch: quer darüber schneiden, durch beide Lagen, nie ihm entlang.</translation>
    </message>
    <message>
        <source>Begins at the fold: cut across it, through both layers, never along it.</source>
        <translation>Beginnt am Bruch: quer darüber schneiden, durch beide Lagen, nie ihm entlang.</translation>
    </message>
    <message>
        <source>Ends at the fold: cut across it, through both layers, never along it.</source>
        <translation>Endet am Bruch: quer darüber schneiden, durch beide Lagen, nie ihm entlang.</translation>
    </message>
    <message>
        <source>This stroke leaves the light: move the cloth first.</source>
        <translation>Dieser Zug verlässt das Licht: Verschieben Sie zuerst den Stoff.</translation>
    </message>
    <message>
        <source>This stroke leaves the mat: shift the mat under it first.</source>
        <translation>Dieser Zug verlässt die Matte: Schieben Sie zuerst die Matte darunter.</translation>
    </message>
    <message>
        <source>Too short between its corners for this blade: use shears.</source>
        <translation>Zwischen den Ecken zu kurz für diese Klinge: Nehmen Sie die Schere.</translation>
    </message>
    <message>
        <source>Too tight a curve for this blade: take the %1 mm one.</source>
        <translation>Zu enger Bogen für diese Klinge: Nehmen Sie die mit %1 mm.</translation>
    </message>
    <message>
        <source>Too tight a curve for any round blade: use shears.</source>
        <translation>Zu enger Bogen für jede runde Klinge: Nehmen Sie die Schere.</translation>
    </message>
    <message>
        <source>This stroke crosses one that is cut already.</source>
        <translation>Dieser Zug kreuzt einen, der schon geschnitten ist.</translation>
    </message>
    <message>
        <source>not at true size: a pixel is %1 mm</source>
        <translation>nicht in wahrer Größe: ein Pixel ist %1 mm</translation>
    </message>
    <message>
        <source>A picture of the lesson needs 320 x 240 pixels at least.</source>
        <translation>Ein Bild der Lektion braucht mindestens 320 x 240 Pixel.</translation>
    </message>
    <message>
        <source>Make it larger.</source>
        <translation>Machen Sie es größer.</translation>
    </message>
    <message>
        <source>The camera does not look at the light on the table.</source>
        <translation>Die Kamera sieht nicht auf das Licht auf dem Tisch.</translation>
    </message>
    <message>
        <source>Point it there and locate it again.</source>
        <translation>Richten Sie sie dorthin und bestimmen Sie ihren Ort neu.</translation>
    </message>
    <message>
        <source>The camera's pictures have another size than when it was located.</source>
        <translation>Die Bilder der Kamera haben eine andere Größe als bei der Bestimmung ihres Ortes.</translation>
    </message>
    <message>
        <source>Set it to %1, or locate it again.</source>
        <translation>Stellen Sie sie auf %1, oder bestimmen Sie ihren Ort neu.</translation>
    </message>
    <message>
        <source>The bare cloth has not been looked at yet.</source>
        <translation>Der bloße Stoff wurde noch nicht angeschaut.</translation>
    </message>
    <message>
        <source>Clear the cloth and wait.</source>
        <translation>Räumen Sie den Stoff frei und warten Sie.</translation>
    </message>
    <message>
        <source>The camera sees the cloth too dark to watch it.</source>
        <translation>Die Kamera sieht den Stoff zu dunkel, um ihn zu beobachten.</translation>
    </message>
    <message>
        <source>Give the room more light, or the camera a longer exposure.</source>
        <translation>Geben Sie dem Raum mehr Licht, oder der Kamera eine längere Belichtung.</translation>
    </message>
    <message>
        <source>The camera looks ahead of the blade.</source>
        <translation>Die Kamera schaut vor die Klinge.</translation>
    </message>
    <message>
        <source>It is an aid and misses things: watch your other hand.</source>
        <translation>Sie ist eine Hilfe und übersieht manches: Achten Sie auf Ihre andere Hand.</translation>
    </message>
    <message>
        <source>The camera sends fewer than seven pictures a second, so it tells late.</source>
        <translation>Die Kamera sendet weniger als sieben Bilder in der Sekunde und meldet daher spät.</translation>
    </message>
    <message>
        <source>Give it more light, or set it to smaller pictures.</source>
        <translation>Geben Sie ihr mehr Licht, oder stellen Sie sie auf kleinere Bilder ein.</translation>
    </message>
    <message>
        <source>Nobody looks ahead of the blade.</source>
        <translation>Niemand schaut vor die Klinge.</translation>
    </message>
    <message>
        <source>The cloth has shifted by about %1 mm %2 since the piece was laid.</source>
        <translation>Der Stoff hat sich etwa %1 mm %2 verschoben, seit das Teil aufgelegt wurde.</translation>
    </message>
    <message>
        <source>The cloth's edge, or a mark on it, has shifted by about %1 mm %2 since the piece was laid.</source>
        <translation>Die Stoffkante, oder ein Zeichen auf dem Stoff, hat sich etwa %1 mm %2 verschoben, seit das Teil aufgelegt wurde.</translation>
    </message>
    <message>
        <source>to the right</source>
        <translation>nach rechts</translation>
    </message>
    <message>
        <source>to the left</source>
        <translation>nach links</translation>
    </message>
    <message>
        <source>away from you</source>
        <translation>von Ihnen weg</translation>
    </message>
    <message>
        <source>towards you</source>
        <translation>zu Ihnen hin</translation>
    </message>
    <message>
        <source>Smooth it back the way the arrows point, until the lines come back by themselves.</source>
        <translation>Streichen Sie ihn zurück, wohin die Pfeile zeigen, bis die Linien von selbst wiederkommen.</translation>
    </message>
    <message>
        <source>Or press U and lay the piece anew on the cloth as it lies.</source>
        <translation>Oder drücken Sie U und legen Sie das Teil neu auf den Stoff, wie er jetzt liegt.</translation>
    </message>
    <message>
        <source>Stop, and smooth it back.</source>
        <translation>Halten Sie an, und streichen Sie ihn zurück.</translation>
    </message>
    <message>
        <source>Else press U, lay the piece anew, and R: the camera learns the cloth.</source>
        <translation>Sonst drücken Sie U, legen Sie das Teil neu auf, und R: Die Kamera lernt den Stoff.</translation>
    </message>
    <message>
        <source>The camera has learnt the cloth as it lies now: see that the lines still meet what is cut.</source>
        <translation>Die Kamera hat den Stoff gelernt, wie er jetzt liegt: Sehen Sie nach, ob die Linien noch an das Geschnittene stoßen.</translation>
    </message>
    <message>
        <source>Cut in spite of cloth that has shifted.</source>
        <translation>Geschnitten, obwohl sich der Stoff verschoben hat.</translation>
    </message>
    <message>
        <source>It hardly sees whether this cloth is dragged: look yourself after each stroke, or chalk three crosses beside the lines and press R.</source>
        <translation>Ob dieser Stoff mitgezogen wird, sieht sie kaum: Schauen Sie nach jedem Zug selbst hin, oder zeichnen Sie drei Kreidekreuze neben die Linien und drücken Sie R.</translation>
    </message>
    <message>
        <source>The cloth is not learnt yet.</source>
        <translation>Der Stoff ist noch nicht gelernt.</translation>
    </message>
    <message>
        <source>A stroke of no length cannot be watched.</source>
        <translation>Ein Zug ohne Länge lässt sich nicht beobachten.</translation>
    </message>
    <message>
        <source>Choose another stroke.</source>
        <translation>Wählen Sie einen anderen Zug.</translation>
    </message>
    <message>
        <source>The camera sends no picture.</source>
        <translation>Die Kamera schickt kein Bild.</translation>
    </message>
    <message>
        <source>The camera's picture stands still.</source>
        <translation>Das Bild der Kamera steht still.</translation>
    </message>
    <message>
        <source>Unplug the camera and plug it in again.</source>
        <translation>Stecken Sie die Kamera aus und wieder ein.</translation>
    </message>
    <message>
        <source>It is too dark to watch the cloth.</source>
        <translation>Es ist zu dunkel, um den Stoff zu beobachten.</translation>
    </message>
    <message>
        <source>Most of the way ahead is hidden, or the cloth does not lie as it was learnt.</source>
        <translation>Der Weg voraus ist größtenteils verdeckt, oder der Stoff liegt nicht, wie er gelernt wurde.</translation>
    </message>
    <message>
        <source>Uncover it, or smooth it back.</source>
        <translation>Decken Sie ihn auf, oder streichen Sie den Stoff zurück.</translation>
    </message>
    <message>
        <source>The camera or the table has moved.</source>
        <translation>Die Kamera oder der Tisch hat sich bewegt.</translation>
    </message>
    <message>
        <source>Locate the camera again, and learn the bare cloth.</source>
        <translation>Bestimmen Sie den Ort der Kamera neu, und lassen Sie den bloßen Stoff lernen.</translation>
    </message>
    <message>
        <source>Part of the way ahead is out of the camera's sight.</source>
        <translation>Ein Stück des Wegs voraus sieht die Kamera nicht.</translation>
    </message>
    <message>
        <source>Move the cloth, or place the camera higher.</source>
        <translation>Verschieben Sie den Stoff, oder stellen Sie die Kamera höher.</translation>
    </message>
    <message>
        <source>Page Down or N: next step</source>
        <translation>Bild ab oder N: nächster Schritt</translation>
    </message>
    <message>
        <source>Page Up: back</source>
        <translation>Bild auf: zurück</translation>
    </message>
    <message>
        <source>right, left: open and close the parts</source>
        <translation>rechts, links: Teile öffnen und schließen</translation>
    </message>
    <message>
        <source>space: play the opening</source>
        <translation>Leertaste: Öffnung abspielen</translation>
    </message>
    <message>
        <source>L: these words</source>
        <translation>L: diese Worte</translation>
    </message>
    <message>
        <source>Esc: end</source>
        <translation>Esc: Ende</translation>
    </message>
    <message>
        <source>closed  %1  open, %2 %</source>
        <translation>zu  %1  offen, %2 %</translation>
    </message>
    <message>
        <source>%1 of %2  %3</source>
        <translation>%1 von %2  %3</translation>
    </message>
    <message>
        <source>the cloth's fold lies on the two fine lines</source>
        <translation>der Stoffbruch liegt auf den zwei feinen Linien</translation>
    </message>
    <message>
        <source>shift: 0.4 in and 5°, ctrl: 0.004 in and 0.02°</source>
        <translation>Umschalt: 0,4 Zoll und 5°, Strg: 0,004 Zoll und 0,02°</translation>
    </message>
    <message>
        <source>at the underarm</source>
        <translation>auf Höhe der Achsel</translation>
    </message>
    <message>
        <source>%1 above the underarm</source>
        <translation>%1 über der Achsel</translation>
    </message>
    <message>
        <source>%1 below the underarm</source>
        <translation>%1 unter der Achsel</translation>
    </message>
    <message>
        <source>at the collar bone</source>
        <translation>auf Höhe des Schlüsselbeins</translation>
    </message>
    <message>
        <source>%1 above the collar bone</source>
        <translation>%1 über dem Schlüsselbein</translation>
    </message>
    <message>
        <source>%1 below the collar bone</source>
        <translation>%1 unter dem Schlüsselbein</translation>
    </message>
    <message>
        <source>at the waist</source>
        <translation>auf Taillenhöhe</translation>
    </message>
    <message>
        <source>%1 above the waist</source>
        <translation>%1 über der Taille</translation>
    </message>
    <message>
        <source>%1 below the waist</source>
        <translation>%1 unter der Taille</translation>
    </message>
    <message>
        <source>cowl front</source>
        <translation>Vorderteil</translation>
    </message>
    <message>
        <source>cowl back</source>
        <translation>Wasserfall-Rückenteil</translation>
    </message>
    <message>
        <source>cowl facing</source>
        <translation>Beleg</translation>
    </message>
    <message>
        <source>back</source>
        <translation>Rückenteil</translation>
    </message>
    <message>
        <source>inner panel</source>
        <translation>Innenstück</translation>
    </message>
    <message>
        <source>The reading is of a figure that was lit before the table was mended or calibrated anew, and says nothing of the light as it is now.</source>
        <translation>Die Messung gehört zu einer Figur, die leuchtete, bevor der Tisch gerichtet oder neu kalibriert wurde, und sagt nichts über das Licht, wie es jetzt ist.</translation>
    </message>
    <message>
        <source>Light the figure again, whose crosses are called %1, %2 and so on, and measure that.</source>
        <translation>Lassen Sie die Figur neu leuchten, deren Kreuze %1, %2 und so weiter heißen, und messen Sie diese.</translation>
    </message>
    <message>
        <source>The scale was mended before by this very reading, %1 mm.</source>
        <translation>Der Maßstab wurde schon mit eben dieser Messung gerichtet, %1 mm.</translation>
    </message>
    <message>
        <source>It counts once.</source>
        <translation>Sie zählt einmal.</translation>
    </message>
    <message>
        <source>Light the figure anew and lay the tape there; if it reads the same again, or agrees, nothing is left to mend.</source>
        <translation>Lassen Sie die Figur neu leuchten und legen Sie das Band dort an; zeigt es wieder dasselbe oder passt es, so ist nichts mehr zu richten.</translation>
    </message>
    <message>
        <source>A reading kept with the table is between no crosses.</source>
        <translation>Eine beim Tisch bewahrte Messung liegt zwischen keinen Kreuzen.</translation>
    </message>
    <message>
        <source>The readings kept in the table file are damaged.</source>
        <translation>Die Messungen in der Tischdatei sind beschädigt.</translation>
    </message>
    <message>
        <source>The table file was changed or damaged: %1.</source>
        <translation>Die Tischdatei wurde verändert oder beschädigt: %1.</translation>
    </message>
    <message>
        <source>its sizes do not go together</source>
        <translation>ihre Größen passen nicht zusammen</translation>
    </message>
    <message>
        <source>it states errors that cannot be</source>
        <translation>sie nennt Fehler, die nicht sein können</translation>
    </message>
    <message>
        <source>it states a scale that no print has</source>
        <translation>sie nennt einen Maßstab, den kein Druck hat</translation>
    </message>
    <message>
        <source>its lens is not above the table</source>
        <translation>ihr Objektiv liegt nicht über dem Tisch</translation>
    </message>
    <message>
        <source>the light's outline is not where lens and picture say</source>
        <translation>der Umriss des Lichts liegt nicht, wo Objektiv und Bild es sagen</translation>
    </message>
    <message>
        <source>The table file was changed or damaged: its schema or its units are not those of a table map.</source>
        <translation>Die Tischdatei wurde verändert oder beschädigt: ihr Schema oder ihre Einheit ist nicht die einer Tischkarte.</translation>
    </message>
    <message>
        <source>Calibrate anew, or use a copy of the file from before.</source>
        <translation>Kalibrieren Sie neu, oder nehmen Sie eine frühere Kopie der Datei.</translation>
    </message>
    <message>
        <source>The tape from sheet %1 to sheet %2 is given as %3 mm, but the photographs say about %4 mm.</source>
        <translation>Das Band von Blatt %1 zu Blatt %2 ist mit %3 mm angegeben, doch die Fotos sagen etwa %4 mm.</translation>
    </message>
    <message>
        <source>It looks like centimetres: give it in mm, or with cm behind it.</source>
        <translation>Es sieht nach Zentimetern aus: Geben Sie es in mm an, oder mit cm dahinter.</translation>
    </message>
    <message>
        <source>It looks like inches: give it in mm, or with in behind it.</source>
        <translation>Es sieht nach Zoll aus: Geben Sie es in mm an, oder mit in dahinter.</translation>
    </message>
    <message>
        <source>If it stays so, the sheets are printed at another scale: measure both their rulers as well.</source>
        <translation>Bleibt es so, sind die Blätter in anderem Maßstab gedruckt: Messen Sie auch ihre beiden Lineale.</translation>
    </message>
    <message>
        <source>By the rulers the sheets are printed at %1 %.</source>
        <translation>Nach den Linealen sind die Blätter mit %1 % gedruckt.</translation>
    </message>
    <message>
        <source>Printers are off by a few tenths of a percent, or by 3 to 7 % less where a page is fitted to the paper.</source>
        <translation>Drucker liegen um wenige Zehntel Prozent daneben, oder um 3 bis 7 % darunter, wo eine Seite ans Papier angepasst wird.</translation>
    </message>
    <message>
        <source>All lines hang on these two lengths: measure both rulers once more, end tick to end tick, and check the light by a tape before cutting.</source>
        <translation>Alle Linien hängen an diesen zwei Längen: Messen Sie beide Lineale noch einmal, von Endstrich zu Endstrich, und prüfen Sie das Licht vor dem Schneiden mit einem Band.</translation>
    </message>
    <message>
        <source>The photograph %1 is the same as %2 and was left out: it is no second look at the table.</source>
        <translation>Das Foto %1 ist dasselbe wie %2 und wurde weggelassen: Es ist kein zweiter Blick auf den Tisch.</translation>
    </message>
    <message>
        <source>The file %1 is damaged: it breaks off in the middle of the photograph.</source>
        <translation>Die Datei %1 ist beschädigt: Sie bricht mitten im Foto ab.</translation>
    </message>
</context>
</TS>
