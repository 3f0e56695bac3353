@echo off
rem Starts Darkrim with the Java runtime that lies beside it. DARKRIM_JAVA_OPTIONS may hold options for Java, such as -Xmx8g.
"%~dp0..\lib\runtime\bin\java.exe" -XX:+UseSerialGC %DARKRIM_JAVA_OPTIONS% -jar "%~dp0..\lib\darkrim.jar" %*
