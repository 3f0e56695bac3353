@echo off
rem Starts Darkrim with the Java runtime that lies beside it. DARKRIM_JAVA_OPTIONS may hold options for Java, such as -Xmx8g.
"%~dp0..\lib\runtime\bin\java.exe" -XX:+UseSerialGC -XX:Tier4InvocationThreshold=50000 -XX:Tier4MinInvocationThreshold=6000 -XX:Tier4CompileThreshold=150000 -XX:Tier4BackEdgeThreshold=400000 -Ddarkrim.command=darkrim %DARKRIM_JAVA_OPTIONS% -jar "%~dp0..\lib\darkrim.jar" %*
