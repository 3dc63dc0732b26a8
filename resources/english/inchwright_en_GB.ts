<?xml version="1.0" encoding="utf-8"?>
<!DOCTYPE TS>
<TS version="2.1" language="en_GB" sourcelanguage="en_GB">
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
</context>
</TS>
