<?xml version="1.0" encoding="utf-8"?>
<!DOCTYPE TS>
<TS version="2.1" language="en_US" sourcelanguage="en_GB">
<context>
    <name>Desk</name>
    <message numerus="yes">
        <source>%n feature(s)</source>
        <translation>
            <numerusform>%n feature</numerusform>
            <numerusform>%n features</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n setup(s)</source>
        <translation>
            <numerusform>%n setup</numerusform>
            <numerusform>%n setups</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>The table is on the clipboard: %n place(s)</source>
        <translation>
            <numerusform>The table is on the clipboard: %n place</numerusform>
            <numerusform>The table is on the clipboard: %n places</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>Written to %1 and %n more</source>
        <translation>
            <numerusform>Written to %1 and %n more</numerusform>
            <numerusform>Written to %1 and %n more</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>The print offers %n place(s) and figure(s): Ctrl+G goes through them</source>
        <translation>
            <numerusform>The print offers one more: Ctrl+G shows it</numerusform>
            <numerusform>The print offers %n places and figures: Ctrl+G goes through them</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>&amp;Doubts: %n open</source>
        <translation>
            <numerusform>&amp;Doubts: %n open</numerusform>
            <numerusform>&amp;Doubts: %n open</numerusform>
        </translation>
    </message>
    <message>
        <source>Width of the vice's jaws</source>
        <translation>Width of the vise's jaws</translation>
    </message>
    <message>
        <source>Height of the vice's jaws</source>
        <translation>Height of the vise's jaws</translation>
    </message>
    <message>
        <source>How far the vice opens</source>
        <translation>How far the vise opens</translation>
    </message>
    <message>
        <source>Vice: jaws wide</source>
        <translation>Vise: jaws wide</translation>
    </message>
    <message>
        <source>centre hole</source>
        <translation>center hole</translation>
    </message>
    <message>
        <source>Readout in millimetres</source>
        <translation>Readout in millimeters</translation>
    </message>
    <message>
        <source>millimetres</source>
        <translation>millimeters</translation>
    </message>
    <message>
        <source>Turned, anticlockwise</source>
        <translation>Turned, counterclockwise</translation>
    </message>
    <message>
        <source>towards me</source>
        <translation>toward me</translation>
    </message>
    <message>
        <source>Reading distance in millimetres</source>
        <translation>Reading distance in millimeters</translation>
    </message>
    <message>
        <source>Square up: point at a corner or centre whose place you know</source>
        <translation>Square up: point at a corner or center whose place you know</translation>
    </message>
    <message>
        <source>centres A C 5/8</source>
        <translation>centers A C 5/8</translation>
    </message>
    <message>
        <source>towards the chuck</source>
        <translation>toward the chuck</translation>
    </message>
    <message>
        <source>centre &amp;line</source>
        <translation>center &amp;line</translation>
    </message>
    <message>
        <source>&amp;Centre line</source>
        <translation>&amp;Center line</translation>
    </message>
    <message>
        <source>Put the centre line</source>
        <translation>Put the center line</translation>
    </message>
    <message>
        <source>centre line: now the same surface at the other side, straight across</source>
        <translation>center line: now the same surface at the other side, straight across</translation>
    </message>
    <message>
        <source>centre line: point at the line of a surface at one side of the axis</source>
        <translation>center line: point at the line of a surface at one side of the axis</translation>
    </message>
    <message>
        <source>%1, placed by centre distances, angles or the like</source>
        <translation>%1, placed by center distances, angles or the like</translation>
    </message>
    <message>
        <source>straight from one to the other it agrees: if it is lettered so, type crs behind it</source>
        <translation>straight from one to the other it agrees: if it is lettered so, type ctrs behind it</translation>
    </message>
</context>
</TS>
