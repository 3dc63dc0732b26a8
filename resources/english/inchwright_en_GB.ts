<?xml version="1.0" encoding="utf-8"?>
<!DOCTYPE TS>
<TS version="2.1" language="en_GB" sourcelanguage="en_GB">
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
</context>
</TS>
