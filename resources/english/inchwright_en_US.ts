<?xml version="1.0" encoding="utf-8"?>
<!DOCTYPE TS>
<TS version="2.1" language="en_US" sourcelanguage="en_GB">
<context>
    <name>Desk</name>
    <message numerus="yes">
        <source>%1 face, %n feature(s)</source>
        <translation>
            <numerusform>%1 face, %n feature</numerusform>
            <numerusform>%1 face, %n features</numerusform>
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
</context>
</TS>
